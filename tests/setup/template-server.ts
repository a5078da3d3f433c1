import { rmSync } from 'node:fs'
import { createServer, type Server } from 'node:net'
import { join } from 'node:path'
import { migrate } from '@/lib/cli/migrate'
import type { Provider } from '@/lib/data/gate/provider'
import { startPostgres, type RunningPostgres } from './postgres'

export const templateDatabase = 'brasstag_template'

/** What a test needs to make itself a fresh database. */
export type Template = { readonly from: string }

/**
 * Makes the migrated template of a provider on the first request of the run and hands it to every worker: tests that
 * need no database do not wait for one, and PostgreSQL starts only where it is used.
 */
export class TemplateServer {
  readonly #made = new Map<Provider, Promise<Template>>()
  readonly #server: Server
  #postgres: RunningPostgres | undefined

  constructor(
    private readonly folder: string,
    readonly socketPath: string,
  ) {
    this.#server = createServer((socket) => {
      socket.on('error', () => socket.destroy()) // a worker that was stopped while it waited
      socket.once('data', (asked) => {
        this.#template(String(asked).trim() as Provider).then(
          (template) => socket.end(JSON.stringify(template)),
          (error: unknown) => socket.end(JSON.stringify({ failed: String(error) })),
        )
      })
    })
  }

  listen(): Promise<void> {
    return new Promise((resolve) => this.#server.listen(this.socketPath, resolve))
  }

  async close(): Promise<void> {
    await new Promise((resolve) => this.#server.close(resolve))
    await this.#postgres?.stop()
    rmSync(this.folder, { recursive: true, force: true })
  }

  #template(provider: Provider): Promise<Template> {
    const known = this.#made.get(provider)
    if (known) return known
    const making = provider === 'sqlite' ? this.#sqlite() : this.#postgresql()
    this.#made.set(provider, making)
    return making
  }

  async #sqlite(): Promise<Template> {
    const path = join(this.folder, 'template.db')
    await migrate(`file:${path}`)
    return { from: path }
  }

  async #postgresql(): Promise<Template> {
    this.#postgres = await startPostgres(join(this.folder, 'postgres'))
    const { urlOf, administer } = this.#postgres
    await administer(`CREATE DATABASE ${templateDatabase} TEMPLATE template0 ENCODING 'UTF8'`)
    await migrate(urlOf(templateDatabase))
    return { from: urlOf('postgres') }
  }
}
