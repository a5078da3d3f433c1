import { join } from 'node:path'
import Database from 'better-sqlite3'

/** What the file of a shop says, read beside its server. */
export function onRecord<Row>(folder: string, sql: string, ...values: readonly (string | number)[]): Row[] {
  const database = new Database(join(folder, 'brasstag.db'), { readonly: true })
  try {
    return database.prepare(sql).all(...values) as Row[]
  } finally {
    database.close()
  }
}
