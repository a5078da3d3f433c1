import { execFile } from 'node:child_process'
import { join } from 'node:path'

const root = join(import.meta.dirname, '..', '..')

export type Said = { readonly ok: boolean; readonly said: string }
export type Ended = Said & { readonly answer: string; readonly code: number }

/** Runs a file of this project in a process of its own, as the commands do, and gives what it said. */
export const elsewhereRun = (
  file: string,
  args: readonly string[],
  env: Readonly<Record<string, string>> = {},
): Promise<Ended> =>
  new Promise((resolve) => {
    const { DATABASE_URL: _url, BRASSTAG_DATA: _folder, ...rest } = process.env
    execFile(
      process.execPath,
      ['--conditions=react-server', '--import', 'tsx', file, ...args],
      { cwd: root, env: { ...rest, ...env } },
      (error, stdout, stderr) =>
        resolve({ ok: error === null, said: stderr, answer: stdout, code: Number(error?.code ?? 0) }),
    )
  })

/** Opens a database in another process and closes it again. */
export async function elsewhere(url: string): Promise<Said> {
  const { ok, said } = await elsewhereRun('tests/setup/open-and-close.ts', [url])
  return { ok, said }
}
