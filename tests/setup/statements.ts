import Database from 'better-sqlite3'
import { vi } from 'vitest'

/** The queries that a piece of work sends to SQLite, in their order. */
export async function selectsOf(work: () => Promise<unknown>): Promise<readonly string[]> {
  const sent: string[] = []
  const prepare = Database.prototype.prepare
  const spy = vi.spyOn(Database.prototype, 'prepare').mockImplementation(function (
    this: Database.Database,
    sql: string,
  ) {
    sent.push(sql)
    return prepare.call(this, sql)
  })
  try {
    await work()
  } finally {
    spy.mockRestore()
  }
  return sent.filter((sql) => sql.startsWith('SELECT'))
}
