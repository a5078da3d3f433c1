import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join, relative } from 'node:path'
import type { Provider } from '@/lib/data/gate/provider'
import { postgresqlSchema } from './generate.mjs'
import { migrationsFolder, readSchema } from './migration-files'
import { root } from './process.mjs'
import { migrationPath, schemaChange } from './schema-engine'

/**
 * `npx tsx lib/cli/make-migration.ts <name> [--again]` writes the migration from the schema that the last one ended
 * with to the schema as it is now, for both providers. `--again` makes the very first one anew: only while nothing has
 * been released, for databases that hold the old one cannot follow.
 */
const [name, again] = process.argv.slice(2)
if (!name || !/^\d{4}_[a-z0-9_]+$/.test(name)) {
  throw new Error('Name the migration with four digits and words, such as 0002_photo_size.')
}

/** The schema that the migrations so far end with: kept beside them, so that no database is needed to compare. */
const keptSchema = (): string => join(dirname(migrationsFolder('sqlite')), 'schema-at-last-migration.prisma')

const lastSchema = (provider: Provider): string => {
  if (again) return ''
  try {
    const text = readFileSync(keptSchema(), 'utf8')
    return provider === 'sqlite' ? text : postgresqlSchema(text)
  } catch {
    return '' // none yet: this is the first
  }
}

for (const provider of ['sqlite', 'postgresql'] as const) {
  const sql = await schemaChange(provider, lastSchema(provider))
  if (sql === '') {
    process.stdout.write(`${provider}: nothing has changed\n`)
    continue
  }
  if (again) rmSync(migrationsFolder(provider), { recursive: true, force: true })
  const path = migrationPath(provider, name)
  mkdirSync(dirname(path), { recursive: true })
  writeFileSync(path, sql)
  process.stdout.write(`${provider}: ${relative(root, path)}\n`)
}
writeFileSync(keptSchema(), readSchema('sqlite'))
