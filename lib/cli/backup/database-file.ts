import Database from 'better-sqlite3'
import { findIndexOf, textTables } from '@/lib/data/gate/find-index'

/** What a database file holds, read past the client: it may be of an earlier version. */
export type FileFacts = {
  readonly mode: 'demo' | 'shop' | null
  readonly schema: string
  readonly counts: Record<string, number>
  readonly newestAudit: { readonly seq: number; readonly at: string } | null
}

const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`

const indexTables = new RegExp(`^(?:${textTables.map(findIndexOf).join('|')})(?:_|$)`)

/** The tables of the models: not those of SQLite, of the migrations, or of the search index. */
export function tablesOf(file: Database.Database): string[] {
  const rows = file
    .prepare(`SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY name`)
    .pluck()
    .all() as string[]
  return rows.filter((name) => !/^(?:sqlite_|_)/.test(name) && !indexTables.test(name))
}

/** Opens the file as it is, for reading. A file that is not there is not made. */
export function withDatabaseFile<T>(path: string, work: (file: Database.Database) => T): T {
  const file = new Database(path, { readonly: true, fileMustExist: true })
  try {
    return work(file)
  } finally {
    file.close()
  }
}

export function factsOf(file: Database.Database): FileFacts {
  const tables = tablesOf(file)
  const one = <T>(table: string, sql: string): T | undefined =>
    tables.includes(table) ? (file.prepare(sql).get() as T | undefined) : undefined
  const mode = one<{ mode: string }>('Shop', 'SELECT mode FROM "Shop" LIMIT 1')?.mode
  const count = (table: string): number =>
    file
      .prepare(`SELECT count(*) FROM ${quoted(table)}`)
      .pluck()
      .get() as number
  return {
    mode: mode === 'demo' || mode === 'shop' ? mode : null,
    schema: newestMigration(file),
    counts: Object.fromEntries(tables.map((table) => [table, count(table)])),
    newestAudit:
      one<{ seq: number; at: string }>('AuditEntry', 'SELECT seq, at FROM "AuditEntry" ORDER BY seq DESC LIMIT 1') ??
      null,
  }
}

/** '' while there is none. */
export function newestMigration(file: Database.Database): string {
  const there = file.prepare(`SELECT 1 FROM sqlite_master WHERE name = '_prisma_migrations'`).get()
  if (there === undefined) return ''
  const sql = `SELECT max(migration_name) FROM _prisma_migrations
    WHERE finished_at IS NOT NULL AND rolled_back_at IS NULL`
  return (file.prepare(sql).pluck().get() as string | null) ?? ''
}

/** Hashes of all files that rows point at: photos, logo, papers. */
export const filesPointedAt = (file: Database.Database): string[] =>
  tablesOf(file).includes('File')
    ? (file.prepare('SELECT sha256 FROM "File" ORDER BY sha256').pluck().all() as string[])
    : []

/** What is wrong inside the file, '' when nothing is: its pages and indexes, then its foreign keys. */
export function faultIn(file: Database.Database): string {
  const said = file.pragma('integrity_check(1)', { simple: true }) as string
  if (said !== 'ok') return said.split('\n').slice(0, 2).join(' ')
  const [broken] = file.pragma('foreign_key_check') as { table: string; parent: string }[]
  return broken ? `a row of ${broken.table} points at one of ${broken.parent} that is not there` : ''
}
