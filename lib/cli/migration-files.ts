import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Provider } from '@/lib/data/gate/provider'
import { postgresqlSchema } from './generate.mjs'
import { root } from './process.mjs'

export const migrationsFolder = (provider: Provider): string => join(root, 'prisma', 'migrations', provider)

export type Migration = { readonly name: string; readonly sql: string }

/** In the order of their names, which begin with a number. */
export function readMigrations(provider: Provider): Migration[] {
  const folder = migrationsFolder(provider)
  if (!existsSync(folder)) return []
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort()
    .map((name) => ({ name, sql: readFileSync(join(folder, name, 'migration.sql'), 'utf8') }))
}

export function readSchema(provider: Provider): string {
  const schema = readFileSync(join(root, 'prisma', 'schema.prisma'), 'utf8')
  return provider === 'sqlite' ? schema : postgresqlSchema(schema)
}
