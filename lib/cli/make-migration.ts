import { mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, relative } from 'node:path'
import { postgresqlSchema } from './generate.mjs'
import { migrationsFolder } from './migration-files'
import { root } from './process.mjs'
import { migrationPath, schemaChange, schemaOfMigrations } from './schema-engine'

/**
 * `npx tsx lib/cli/make-migration.ts <name> [--again]` writes the migration from the schema that the last one ended
 * with to the schema as it is now, for both providers. `--again` makes the very first one anew: only while nothing has
 * been released, for databases that hold the old one cannot follow.
 */
const [name, again] = process.argv.slice(2)
if (!name || !/^\d{4}_[a-z0-9_]+$/.test(name)) {
  throw new Error('Name the migration with four digits and words, such as 0002_photo_size.')
}

const last = again ? '' : await schemaOfMigrations()

for (const provider of ['sqlite', 'postgresql'] as const) {
  const before = last === '' || provider === 'sqlite' ? last : postgresqlSchema(last)
  const sql = await schemaChange(provider, before)
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
