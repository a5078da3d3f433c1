import { existsSync } from 'node:fs'
import { PrismaPg } from '@prisma/adapter-pg'
import { DriverAdapterError, type SqlDriverAdapter } from '@prisma/driver-adapter-utils'
import { filePathOf, providerOf } from '@/lib/data/gate/provider'
import { GatedSqlite } from '@/lib/data/gate/sqlite-gate'

export type Row = readonly unknown[]

/** A bare connection, for what must be asked of a database before there is a client for it. */
export async function withConnection<T>(url: string, work: (connection: SqlDriverAdapter) => Promise<T>): Promise<T> {
  const factory = providerOf(url) === 'sqlite' ? new GatedSqlite(url) : new PrismaPg(url)
  const connection = await factory.connect()
  try {
    return await work(connection)
  } finally {
    await connection.dispose()
  }
}

export const rowsOf = async (connection: SqlDriverAdapter, sql: string): Promise<readonly Row[]> =>
  (await connection.queryRaw({ sql, args: [], argTypes: [] })).rows

/** None when the table, or the database's file, is not there yet; and then it is not made either. */
export async function rowsIfThere(url: string, sql: string): Promise<readonly Row[]> {
  if (providerOf(url) === 'sqlite' && !existsSync(filePathOf(url))) return []
  try {
    return await withConnection(url, (connection) => rowsOf(connection, sql))
  } catch (error) {
    if (error instanceof DriverAdapterError && error.cause.kind === 'TableDoesNotExist') return []
    throw error
  }
}
