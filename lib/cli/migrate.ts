import { mkdirSync } from 'node:fs'
import { dirname } from 'node:path'
import { pathToFileURL } from 'node:url'
import { Client } from 'pg'
import { filePathOf, providerOf, type Provider } from '@/lib/data/gate/provider'
import { GatedSqlite } from '@/lib/data/gate/sqlite-gate'
import { assertTriggers } from '@/lib/data/gate/triggers'
import { databaseUrlOfProcess } from '@/lib/env'
import { readTriggers } from './migration-files'
import { applyMigrations } from './schema-engine'

/**
 * Brings a database up to date: the migrations not applied yet, then the triggers again, for a migration that rebuilds
 * a table drops them. Returns the names of what was applied.
 */
export async function migrate(url: string): Promise<string[]> {
  const provider = providerOf(url)
  if (provider === 'sqlite') mkdirSync(dirname(filePathOf(url)), { recursive: true, mode: 0o700 })
  const applied = await applyMigrations(url)
  await (provider === 'sqlite' ? guardSqlite(url) : guardPostgres(url))
  return applied
}

/** No moment in which the history is unprotected. */
const triggersOf = (provider: Provider): string => `BEGIN;\n${readTriggers(provider)}\nCOMMIT;`

async function guardSqlite(url: string): Promise<void> {
  const connection = await new GatedSqlite(url).connect()
  try {
    await connection.executeScript(triggersOf('sqlite'))
    await assertTriggers('sqlite', async (sql) => {
      const { rows } = await connection.queryRaw({ sql, args: [], argTypes: [] })
      return rows.map((row) => ({ name: String(row[0]) }))
    })
  } finally {
    await connection.dispose()
  }
}

/** By the driver itself: the adapter cuts a script at every semicolon, and the trigger's function has some inside. */
async function guardPostgres(url: string): Promise<void> {
  const client = new Client({ connectionString: url })
  await client.connect()
  try {
    await client.query(triggersOf('postgresql'))
    await assertTriggers('postgresql', async (sql) => (await client.query<{ name: string }>(sql)).rows)
  } finally {
    await client.end()
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const applied = await migrate(databaseUrlOfProcess())
  process.stdout.write(applied.length > 0 ? `Database brought up to date: ${applied.join(', ')}\n` : '')
}
