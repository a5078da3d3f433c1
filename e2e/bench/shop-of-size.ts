import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { elsewhereRun } from '../../tests/setup/elsewhere'
import { onRecord } from '../../tests/setup/on-record'
import { startServer } from '../server'
import { signInByRequest } from '../sign-in-by-request'

export type SizedShop = {
  readonly url: string
  readonly folder: string
  /** Seconds that the history took to load. */
  readonly loadedS: number
  /** What stands ready in it, by customer. */
  readonly heads: Readonly<Record<string, { readonly number: string; readonly tag: string }>>
  /** The header that says who asks. */
  readonly cookieOf: (signIn: string) => Promise<string>
  readonly stop: () => Promise<void>
}

/** What a script of this project said, or why it failed. */
export async function said(
  file: string,
  args: readonly string[],
  folder: string,
  more: Readonly<Record<string, string>> = {},
): Promise<string> {
  const { ok, answer, said: why } = await elsewhereRun(file, args, { BRASSTAG_DATA: folder, ...more })
  if (!ok) throw new Error(`${file}: ${why}`)
  return answer
}

/** The demo with so many heads before it, and so many readings of each. `before`: what else happens before it starts. */
export async function shopOfSize(
  heads: number,
  readingsEach: number,
  before: (folder: string) => Promise<void> = async () => {},
): Promise<SizedShop> {
  const folder = mkdtempSync(join(tmpdir(), 'brasstag-size-'))
  const remove = () => rmSync(folder, { recursive: true, force: true })
  try {
    const ready = JSON.parse(await said('tests/setup/fill-demo.ts', [], folder)) as SizedShop['heads']
    const began = performance.now()
    await said('tests/bench/fill-history.ts', [folder, String(heads), String(readingsEach)], folder)
    const loadedS = (performance.now() - began) / 1000
    await before(folder)
    const server = await startServer('demo', folder)
    return {
      ...{ url: server.url, folder, loadedS, heads: ready },
      cookieOf: (name) => cookieOf(server.url, name),
      stop: () => server.stop().finally(remove),
    }
  } catch (error) {
    remove()
    throw error
  }
}

export async function cookieOf(url: string, name: string): Promise<string> {
  const cookies = await signInByRequest(url, name)
  return cookies.map(({ name: key, value }) => `${key}=${value}`).join('; ')
}

/** The head of a tag: its own id and that of its visit. */
export function headOfTag(folder: string, tag: string): { headId: string; visitId: string } {
  const [row] = onRecord<{ headId: string; visitId: string }>(
    folder,
    `SELECT t."headId", v."id" AS "visitId" FROM "TagAssignment" t JOIN "Visit" v ON v."headId" = t."headId" WHERE t."number" = ?`,
    tag,
  )
  if (!row) throw new Error(`${tag} is nobody’s.`)
  return row
}

/** Milliseconds until the whole answer is here. */
export async function msOf(url: string, cookie: string): Promise<number> {
  const began = performance.now()
  const answer = await fetch(url, { headers: { cookie }, redirect: 'manual' })
  await answer.arrayBuffer()
  if (answer.status !== 200) throw new Error(`${url}: ${answer.status}`)
  return performance.now() - began
}
