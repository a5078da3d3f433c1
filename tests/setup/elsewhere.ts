import { execFile } from 'node:child_process'
import { join } from 'node:path'
import { bundled } from './bundled'

const root = join(import.meta.dirname, '..', '..')

export type Said = { readonly ok: boolean; readonly said: string }
export type Ended = Said & { readonly answer: string; readonly code: number }

/** Runs a file of this project in a process of its own, as the commands do, and gives what it said. */
export async function elsewhereRun(
  file: string,
  args: readonly string[],
  env: Readonly<Record<string, string>> = {},
): Promise<Ended> {
  const { DATABASE_URL: _url, BRASSTAG_DATA: _folder, ...rest } = process.env
  const command = ['--conditions=react-server', await bundled(file), ...args]
  return new Promise((resolve) => {
    execFile(process.execPath, command, { cwd: root, env: { ...rest, ...env } }, (error, stdout, stderr) =>
      resolve({ ok: error === null, said: stderr, answer: stdout, code: Number(error?.code ?? 0) }),
    )
  })
}

/** Opens a database in another process and closes it again. */
export async function elsewhere(url: string): Promise<Said> {
  const { ok, said } = await elsewhereRun('tests/setup/open-and-close.ts', [url])
  return { ok, said }
}
