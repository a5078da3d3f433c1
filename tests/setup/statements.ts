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

/** How often a piece of work asks the database something, each with all that it brings along counted once. */
export async function asksOf(client: object, work: () => Promise<unknown>): Promise<number> {
  const asked = vi.spyOn(client as { _request: (...request: unknown[]) => unknown }, '_request')
  try {
    await work()
    return asked.mock.calls.length
  } finally {
    asked.mockRestore()
  }
}
