import Database from 'better-sqlite3'
import { Client } from 'pg'
import { faultIn } from './database-file'
import { postgresSource, postgresTarget, withKeysPutOff } from './postgres-rows'
import { copyRows, type Fingerprints, type RowSource } from './rows'
import { sqliteSource, sqliteTarget } from './sqlite-rows'

type Say = (table: string) => void

/** A SQLite file's rows as of one moment. */
export async function withSqliteRows<T>(path: string, work: (source: RowSource) => Promise<T>): Promise<T> {
  const file = new Database(path, { readonly: true, fileMustExist: true })
  try {
    file.exec('BEGIN')
    return await work(sqliteSource(file))
  } finally {
    file.close()
  }
}

/** A PostgreSQL database's rows as of one moment. */
export const withPostgresRows = <T>(url: string, work: (source: RowSource) => Promise<T>): Promise<T> =>
  withPostgres(url, async (client) => {
    await client.query('BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY')
    return work(postgresSource(client))
  })

async function withPostgres<T>(url: string, work: (client: Client) => Promise<T>): Promise<T> {
  const client = new Client({ connectionString: url })
  await client.connect()
  try {
    return await work(client)
  } finally {
    await client.end()
  }
}

/** All rows into an empty SQLite file that has its tables: all, or none. */
export async function copyIntoSqlite(source: RowSource, path: string, say?: Say): Promise<Fingerprints> {
  const file = new Database(path, { fileMustExist: true })
  try {
    file.pragma('foreign_keys = OFF') // a row may come before the one it points at; they are looked at below
    file.exec('BEGIN IMMEDIATE')
    const copied = await copyRows(source, sqliteTarget(file), say)
    file.exec('COMMIT')
    const fault = faultIn(file)
    if (fault !== '') throw new Error(`the copy is not whole: ${fault}`)
    return copied
  } finally {
    file.close()
  }
}

/** All rows into an empty PostgreSQL database that has its tables: all, or none. */
export const copyIntoPostgres = (source: RowSource, url: string, say?: Say): Promise<Fingerprints> =>
  withPostgres(url, (client) => withKeysPutOff(client, () => copyRows(source, postgresTarget(client), say)))
