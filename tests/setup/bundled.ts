import { readdirSync, rmSync, statSync } from 'node:fs'
import { basename, join } from 'node:path'
import { bundle } from '../../lib/cli/bundle.mjs'

const root = join(import.meta.dirname, '..', '..')
/** Two below the root, and out of sight of everything that looks through the project. */
const folder = 'node_modules'
const prefix = '.brasstag-bundle-'
/** Longer than the longest run: another process may still start what it made. */
const keptForMs = 24 * 60 * 60_000

const made = new Map<string, Promise<string>>()

/** A file of this project as Node reads it by itself, made once a process: tests start many processes of a few files. */
export function bundled(file: string): Promise<string> {
  const known = made.get(file) ?? make(file)
  made.set(file, known)
  return known
}

async function make(file: string): Promise<string> {
  removeOld()
  const name = basename(file, '.ts')
  const to = join(folder, `${prefix}${name}-${process.pid}`)
  await bundle(file, to)
  return join(to, `${name}.mjs`)
}

/** A process that is killed leaves what it made. */
function removeOld(): void {
  for (const name of readdirSync(join(root, folder)).filter((one) => one.startsWith(prefix))) {
    const path = join(root, folder, name)
    const madeMs = statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? 0
    if (Date.now() - madeMs > keptForMs) rmSync(path, { recursive: true, force: true })
  }
}
