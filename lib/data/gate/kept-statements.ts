import type { SqlDriverAdapter } from '@prisma/driver-adapter-utils'
import type { Database, Statement } from 'better-sqlite3'

/** About what the pages and deeds of a working day ask, in all their forms. */
const mostKept = 500

type Column = ReturnType<Statement['columns']>[number]

/** A statement as the stock adapter uses it: bound, then run or read once. */
type Bound = {
  readonly reader: boolean
  run(): ReturnType<Statement['run']>
  columns(): readonly Column[]
  raw(): { all(): unknown[] }
}

/**
 * The stock adapter has SQLite work out every statement anew, which takes as long as carrying it out. Here each is worked
 * out once and kept, the one that was longest not used goes first. What it names its columns is kept with it, so all are
 * given up when the tables change.
 *
 * @throws Error when the adapter has no connection where it is looked for: another version of it.
 */
export function keepStatements(adapter: SqlDriverAdapter): void {
  const { client } = adapter as unknown as { readonly client?: Database }
  if (typeof client?.prepare !== 'function') throw new Error('The SQLite adapter keeps its connection elsewhere.')
  const prepare = client.prepare.bind(client)
  const exec = client.exec.bind(client)
  const kept = new Map<string, KeptStatement>()
  const take = (sql: string): KeptStatement => {
    const known = kept.get(sql)
    const statement = known ?? new KeptStatement(sql, prepare(sql))
    if (known) kept.delete(sql)
    kept.set(sql, statement)
    const [oldest] = kept.keys()
    if (kept.size > mostKept && oldest !== undefined) kept.delete(oldest)
    return statement
  }
  const changesTables = /^\s*(?:create|alter|drop|attach|detach|pragma|vacuum|reindex)\b/i
  Object.assign(client, {
    prepare: (sql: string) => {
      if (!changesTables.test(sql)) return take(sql)
      kept.clear()
      return new KeptStatement(sql, prepare(sql))
    },
    exec: (script: string) => {
      kept.clear()
      return exec(script)
    },
  })
}

/**
 * A statement that is worked out. What the client sends to SQLite passes its `bind`, but for the marks of transactions.
 */
export class KeptStatement {
  #columns: readonly Column[] | null = null

  constructor(
    readonly sql: string,
    private readonly statement: Statement,
  ) {}

  bind(args: readonly unknown[]): Bound {
    const { statement } = this
    return {
      reader: statement.reader,
      run: () => statement.run(args),
      columns: () => (this.#columns ??= statement.columns()),
      raw: () => ({ all: () => statement.raw().all(args) }),
    }
  }

  /** Without anything bound, as the adapter begins a transaction. */
  run(): ReturnType<Statement['run']> {
    return this.statement.run()
  }
}
