import { vi } from 'vitest'
import { KeptStatement } from '@/lib/data/gate/kept-statements'

/** One statement as it was sent to SQLite, with its values. */
export type Sent = { readonly sql: string; readonly args: readonly unknown[] }

/** Every statement that a piece of work sends to SQLite, in their order, reads and writes; transaction marks left out. */
export async function statementsOf(work: () => Promise<unknown>): Promise<readonly Sent[]> {
  const sent: Sent[] = []
  const bind = KeptStatement.prototype.bind
  const spy = vi.spyOn(KeptStatement.prototype, 'bind').mockImplementation(function (this: KeptStatement, args) {
    sent.push({ sql: this.sql, args })
    return bind.call(this, args)
  })
  try {
    await work()
  } finally {
    spy.mockRestore()
  }
  return sent.filter(({ sql }) => !/^(BEGIN|COMMIT|ROLLBACK|SAVEPOINT|RELEASE|PRAGMA)\b/i.test(sql))
}

/** The queries that a piece of work sends to SQLite, in their order. */
export async function selectsOf(work: () => Promise<unknown>): Promise<readonly string[]> {
  const sent = await statementsOf(work)
  return sent.map(({ sql }) => sql.trim()).filter((sql) => /^(SELECT|WITH)\b/i.test(sql))
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
