import { rmSync } from 'node:fs'
import Database from 'better-sqlite3'
import { filePathOf, providerOf } from '@/lib/data/gate/provider'
import { rowsIfThere } from '../connection'
import { applyMigrations } from '../schema-engine'
import { copyIntoSqlite, withPostgresRows } from './copy-database'

/** All pages in one step: of one moment, however much is written meanwhile. */
const allPages = 0x7fffffff

/** The database as it is at one moment, as a SQLite file. Nobody who works in it has to wait. */
export async function snapshotInto(url: string, path: string): Promise<void> {
  await (providerOf(url) === 'sqlite' ? copyFile(filePathOf(url), path) : copyPostgres(url, path))
  onlyOneFile(path)
}

async function copyFile(from: string, path: string): Promise<void> {
  const source = new Database(from, { readonly: true, fileMustExist: true })
  try {
    source.pragma('busy_timeout = 10000')
    await source.backup(path, { progress: () => allPages })
  } finally {
    source.close()
  }
}

const newestSql = `SELECT max(migration_name) FROM _prisma_migrations
  WHERE finished_at IS NOT NULL AND rolled_back_at IS NULL`

/** Into tables as the database has them now, which may be of an earlier version than this program's. */
async function copyPostgres(url: string, path: string): Promise<void> {
  const [row] = await rowsIfThere(url, newestSql)
  const newest = row?.[0]
  if (typeof newest !== 'string') throw new Error('the database is empty')
  await applyMigrations(`file:${path}`, newest)
  for (const end of ['.lock', '.holder']) rmSync(`${path}${end}`, { force: true })
  await withPostgresRows(url, (source) => copyIntoSqlite(source, path))
}

/** Without a log of its own beside it, and on the disk when this returns. */
function onlyOneFile(path: string): void {
  const copy = new Database(path)
  try {
    copy.pragma('synchronous = FULL')
    copy.pragma('journal_mode = DELETE')
  } finally {
    copy.close()
  }
}
