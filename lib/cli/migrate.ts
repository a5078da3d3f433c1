import { createHash } from 'node:crypto'
import { mkdirSync } from 'node:fs'
import { dirname } from 'node:path'
import { Client } from 'pg'
import { filePathOf, providerOf, type Provider } from '@/lib/data/gate/provider'
import { findTriggers, rebuildFindIndex } from '@/lib/data/gate/find-index'
import { assertTriggers, listTriggers, triggerScript } from '@/lib/data/gate/triggers'
import { fillFindTexts } from './fill-find-texts'
import { rowsIfThere, rowsOf, withConnection } from './connection'
import { readMigrations } from './migration-files'
import { oneAfterOther } from './one-after-other'

/**
 * Brings a database up to date: the migrations not applied yet, then the triggers again, for a migration that rebuilds
 * a table drops them, and what Find looks in where there is none. Returns the names of what was applied.
 */
export const migrate = (url: string): Promise<string[]> => oneAfterOther(url, 'migrate', () => migrateAlone(url))

async function migrateAlone(url: string): Promise<string[]> {
  const provider = providerOf(url)
  if (provider === 'sqlite') mkdirSync(dirname(filePathOf(url)), { recursive: true, mode: 0o700 })
  const applied = (await everythingIsApplied(url)) ? [] : await applyWithEngine(url)
  const script = triggersOf(provider, applied.length > 0 || (await lacksFindTriggers(url, provider)))
  await (provider === 'sqlite' ? guardSqlite(url, script) : guardPostgres(url, script))
  await fillFindTexts(url)
  return applied
}

/** Whether there is a database that the next `migrate` will change the tables of. */
export async function isToBeBroughtUpToDate(url: string): Promise<boolean> {
  const applied = await rowsIfThere(url, 'SELECT 1 FROM _prisma_migrations LIMIT 1')
  return applied.length > 0 && !(await everythingIsApplied(url))
}

async function lacksFindTriggers(url: string, provider: Provider): Promise<boolean> {
  const wanted = findTriggers(provider)
  if (wanted.length === 0) return false
  const there = new Set((await rowsIfThere(url, listTriggers[provider])).map(([name]) => String(name)))
  return wanted.some((name) => !there.has(name))
}

/** By the engine's own record. The engine takes a second to load, which an ordinary start need not wait for. */
async function everythingIsApplied(url: string): Promise<boolean> {
  const rows = await rowsIfThere(
    url,
    `SELECT migration_name, checksum FROM _prisma_migrations WHERE finished_at IS NOT NULL AND rolled_back_at IS NULL`,
  )
  const applied = new Map(rows.map(([name, checksum]) => [String(name), String(checksum)]))
  return readMigrations(providerOf(url)).every(
    ({ name, sql }) => applied.get(name) === createHash('sha256').update(sql).digest('hex'),
  )
}

async function applyWithEngine(url: string): Promise<string[]> {
  const { applyMigrations } = await import('./schema-engine')
  return applyMigrations(url)
}

/**
 * No moment in which the history is unprotected. A migration may have made a table of texts anew, or texts were changed
 * while nothing kept the index in step: then that is made anew.
 */
const triggersOf = (provider: Provider, anew: boolean): string =>
  ['BEGIN;', triggerScript(provider), anew ? rebuildFindIndex(provider) : '', 'COMMIT;'].join('\n')

const guardSqlite = (url: string, script: string): Promise<void> =>
  withConnection(url, async (connection) => {
    await connection.executeScript(script)
    await assertTriggers('sqlite', async (sql) =>
      (await rowsOf(connection, sql)).map((row) => ({ name: String(row[0]) })),
    )
  })

/** By the driver itself: the adapter cuts a script at every semicolon, and the trigger's function has some inside. */
async function guardPostgres(url: string, script: string): Promise<void> {
  const client = new Client({ connectionString: url })
  await client.connect()
  try {
    await client.query(script)
    await assertTriggers('postgresql', async (sql) => (await client.query<{ name: string }>(sql)).rows)
  } finally {
    await client.end()
  }
}
