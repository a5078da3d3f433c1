import { spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

export type Server = {
  readonly url: string
  readonly folder: string
  /** Number of the group of processes that it is. */
  readonly group: number
  /** Everything it has printed so far: the code of a new shop's first owner is there. */
  readonly printed: () => string
  readonly stop: () => Promise<void>
  /** Ends it in the middle of whatever it does. */
  readonly kill: () => Promise<void>
}

/**
 * The app as its command starts it, on a free port. The build must be there already. A data folder of its own, made
 * and removed, unless one is given: that one is the caller's to remove. `more`: of its environment.
 */
export async function startServer(
  mode: 'demo' | 'shop',
  given?: string,
  atPort?: number,
  more: Readonly<Record<string, string>> = {},
): Promise<Server> {
  const folder = given ?? mkdtempSync(join(tmpdir(), `brasstag-${mode}-`))
  const port = atPort ?? (await freePort())
  const { DATABASE_URL: _database, BRASSTAG_URL: _address, ...env } = process.env
  const child = spawn(process.execPath, ['lib/cli/start.mjs', mode, '--built'], {
    cwd: join(import.meta.dirname, '..'),
    env: { ...env, BRASSTAG_DATA: folder, PORT: String(port), BRASSTAG_LOG: 'warn', ...more },
    stdio: ['ignore', 'pipe', 'pipe'],
    // A group of its own: what the command starts ends with it.
    detached: true,
  })
  let printed = ''
  const ended = new Promise<void>((resolve) => child.on('close', () => resolve()))
  const ready = new Promise<boolean>((resolve) => {
    const take = (piece: Buffer) => {
      printed += String(piece)
      if (printed.includes('Brasstag is running')) resolve(true)
    }
    child.stdout.on('data', take)
    child.stderr.on('data', take)
    child.on('close', () => resolve(false))
  })
  const end = async (signal: 'SIGTERM' | 'SIGKILL') => {
    if (signal === 'SIGKILL' && child.pid !== undefined) process.kill(-child.pid, signal)
    else child.kill(signal)
    await ended
    if (!given) rmSync(folder, { recursive: true, force: true })
  }
  const stop = () => end('SIGTERM')
  if (!(await ready)) {
    await stop()
    throw new Error(`The ${mode} did not start:\n${printed}`)
  }
  const url = `http://127.0.0.1:${port}`
  return { url, folder, group: child.pid ?? 0, printed: () => printed, stop, kill: () => end('SIGKILL') }
}

export const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const probe = createServer()
    probe.on('error', reject)
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address()
      const port = typeof address === 'object' && address ? address.port : 0
      probe.close(() => resolve(port))
    })
  })
