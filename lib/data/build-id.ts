import 'server-only'
import { randomUUID } from 'node:crypto'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

let known: string | undefined

/** Which build of the app this is; without one (development, tests) each process is its own. */
export function buildId(): string {
  known ??= read()
  return known
}

function read(): string {
  const file = join(/* turbopackIgnore: true */ process.cwd(), '.next', 'BUILD_ID')
  const built = process.env.NODE_ENV === 'production' && existsSync(file)
  return built ? readFileSync(file, 'utf8').trim() : randomUUID()
}
