import { existsSync } from 'node:fs'
import { filePathOf, providerOf } from '@/lib/data/gate/provider'
import { migrate } from '../migrate'
import { copyIntoPostgres, copyIntoSqlite, withPostgresRows, withSqliteRows } from './copy-database'
import { differing, fingerprintsOf, type Fingerprints, type RowSource } from './rows'

const withRowsOf = <T>(url: string, work: (source: RowSource) => Promise<T>): Promise<T> =>
  providerOf(url) === 'sqlite' ? withSqliteRows(filePathOf(url), work) : withPostgresRows(url, work)

/** A hash over every row of every table, the same on both databases for the same rows. */
export const databaseFingerprints = (url: string): Promise<Fingerprints> => withRowsOf(url, fingerprintsOf)

/** Makes the tables where they are not there yet; refuses a database in which anything stands. */
export async function refuseFilled(url: string): Promise<void> {
  if (providerOf(url) === 'sqlite' && existsSync(filePathOf(url)))
    throw new Error(`${filePathOf(url)} is there already`)
  await migrate(url)
  const filled = Object.values(await databaseFingerprints(url)).some(({ rows }) => rows > 0)
  if (filled) throw new Error('the database that was named is not empty: make a new one')
}

/**
 * Copies every row from one database into another, which is empty and has its tables, then reads it again there and compares
 * the two by a hash over every row. A copy that stops half way leaves the target empty.
 */
export async function moveRows(from: string, to: string, say?: (table: string) => void): Promise<Fingerprints> {
  const copied = await withRowsOf(from, (source) =>
    providerOf(to) === 'sqlite' ? copyIntoSqlite(source, filePathOf(to), say) : copyIntoPostgres(source, to, say),
  )
  const different = differing(copied, await databaseFingerprints(to))
  if (different.length > 0) throw new Error(`the copy is not the same in ${different.join(', ')}`)
  await migrate(to) // the search index over what has come
  return copied
}
