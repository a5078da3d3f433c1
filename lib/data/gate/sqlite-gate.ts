import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3'
import {
  DriverAdapterError,
  isDriverAdapterError,
  type IsolationLevel,
  type SqlDriverAdapter,
  type SqlMigrationAwareDriverAdapterFactory,
  type SqlQuery,
  type SqlResultSet,
  type Transaction,
} from '@prisma/driver-adapter-utils'
import { lockFile, makePrivateFile, type FileLock } from './file-lock'
import { keepStatements } from './kept-statements'
import { filePathOf } from './provider'
import { secureConnection } from './sqlite-settings'
import { Turnstile, type Leave } from './turnstile'
import { whenFree } from './when-free'

/**
 * The SQLite adapter behind a gate. The stock adapter has one connection, and a query outside a transaction runs
 * inside whichever interactive transaction happens to be open: it sees uncommitted rows, and its own acknowledged
 * write is undone by that transaction's rollback. Here everything outside waits until the open transaction has ended.
 * While another program holds the file, whoever writes waits outside of the gate, so that readers go on.
 */
export class GatedSqlite implements SqlMigrationAwareDriverAdapterFactory {
  readonly provider = 'sqlite'
  readonly adapterName = 'brasstag-gated-sqlite'

  /** `url`: of the file that the next connection opens. */
  constructor(public url: string) {}

  async connect(): Promise<SqlDriverAdapter> {
    const path = filePathOf(this.url)
    const lock = lockFile(path)
    try {
      makePrivateFile(path)
      const connection = await this.#stock().connect()
      await secureConnection(connection)
      keepStatements(connection)
      return new GatedConnection(connection, lock)
    } catch (error) {
      lock.release()
      throw error
    }
  }

  connectToShadowDb(): Promise<SqlDriverAdapter> {
    return this.#stock().connectToShadowDb()
  }

  #stock(): PrismaBetterSqlite3 {
    return new PrismaBetterSqlite3({ url: this.url })
  }
}

class GatedConnection implements SqlDriverAdapter {
  readonly provider = 'sqlite'
  readonly adapterName = 'brasstag-gated-sqlite'
  readonly #turnstile = new Turnstile()

  constructor(
    private readonly connection: SqlDriverAdapter,
    private readonly lock: FileLock,
  ) {}

  /** One statement that found the file locked has done nothing: it may be asked again. */
  queryRaw(query: SqlQuery): Promise<SqlResultSet> {
    return whenFree(() => this.#turnstile.pass(() => this.connection.queryRaw(query)))
  }

  executeRaw(query: SqlQuery): Promise<number> {
    return whenFree(() => this.#turnstile.pass(() => this.connection.executeRaw(query)))
  }

  /** A script may have done half of it when it finds the file locked, so it begins only when the file is free. */
  executeScript(script: string): Promise<void> {
    return whenFree(async () => {
      const leave = await this.#turnstile.enter()
      try {
        await this.connection.executeRaw(statement('BEGIN IMMEDIATE'))
        await this.connection.executeRaw(statement('ROLLBACK'))
        await this.connection.executeScript(script)
      } finally {
        leave()
      }
    })
  }

  startTransaction(isolationLevel?: IsolationLevel): Promise<Transaction> {
    return whenFree(async () => {
      const leave = await this.#turnstile.enter()
      try {
        const transaction = await this.connection.startTransaction(isolationLevel)
        await beginWriting(transaction)
        return new GatedTransaction(transaction, leave)
      } catch (error) {
        leave()
        throw error
      }
    })
  }

  getConnectionInfo() {
    return this.connection.getConnectionInfo?.() ?? { supportsRelationJoins: false }
  }

  async dispose(): Promise<void> {
    try {
      await this.connection.dispose()
    } finally {
      this.lock.release()
    }
  }
}

const statement = (sql: string): SqlQuery => ({ sql, args: [], argTypes: [] })

/**
 * The stock adapter begins without the write lock and asks for it at the first write, where SQLite does not wait for it.
 * Taken at the very beginning, it is either had for the whole of the transaction or nothing was done yet.
 */
async function beginWriting(transaction: Transaction): Promise<void> {
  try {
    await transaction.executeRaw(statement('COMMIT'))
    await transaction.executeRaw(statement('BEGIN IMMEDIATE'))
  } catch (error) {
    await transaction.rollback() // gives the adapter's own lock back: nothing is open
    throw error
  }
}

type State = 'open' | 'ending' | 'ended'

const isEnd = ({ sql }: SqlQuery): boolean => sql === 'COMMIT' || sql === 'ROLLBACK'

/**
 * Holds the gate from BEGIN until it has ended, and makes sure that it has. A query that comes after the end (the rest
 * of a statement that a time limit cut short), or after SQLite rolled it back by itself (the disk is full, say), is refused:
 * on the shared connection it would be written for good.
 */
class GatedTransaction implements Transaction {
  readonly provider = 'sqlite'
  readonly adapterName = 'brasstag-gated-sqlite'
  readonly #statements = new Turnstile()
  #state: State = 'open'

  constructor(
    private readonly transaction: Transaction,
    private readonly leave: Leave,
  ) {}

  get options() {
    return this.transaction.options
  }

  queryRaw(query: SqlQuery): Promise<SqlResultSet> {
    return this.#inTurn(() => this.transaction.queryRaw(query))
  }

  executeRaw(query: SqlQuery): Promise<number> {
    return this.#inTurn(() => this.transaction.executeRaw(query), isEnd(query))
  }

  /** One statement after the other: the next one must know whether the one before has undone it all. */
  #inTurn<T>(work: () => Promise<T>, ends = false): Promise<T> {
    return this.#statements.pass(async () => {
      this.#refuseUnlessOpen()
      if (ends) this.#state = 'ending'
      try {
        return await work()
      } catch (error) {
        if (!ends && (await this.#isGone())) this.#state = 'ending'
        throw error
      }
    })
  }

  /** Whether SQLite rolled it back by itself. If so another has begun now, which holds nothing and is undone at the end. */
  async #isGone(): Promise<boolean> {
    try {
      await this.transaction.executeRaw(statement('BEGIN'))
      return true
    } catch {
      return false
    }
  }

  createSavepoint = (name: string) => this.#savepoint(`SAVEPOINT ${name}`)
  rollbackToSavepoint = (name: string) => this.#savepoint(`ROLLBACK TO ${name}`)
  releaseSavepoint = (name: string) => this.#savepoint(`RELEASE SAVEPOINT ${name}`)

  async #savepoint(sql: string): Promise<void> {
    await this.executeRaw(statement(sql))
  }

  async commit(): Promise<void> {
    try {
      await this.transaction.commit()
    } finally {
      await this.#end()
    }
  }

  async rollback(): Promise<void> {
    try {
      await this.transaction.rollback()
    } finally {
      await this.#end()
    }
  }

  #refuseUnlessOpen(): void {
    if (this.#state === 'open') return
    throw new DriverAdapterError({ kind: 'TransactionAlreadyClosed', cause: 'The transaction has ended.' })
  }

  /** A COMMIT that failed (disk full, say) leaves the transaction open: undone before anybody else is let in. */
  async #end(): Promise<void> {
    if (this.#state === 'ended') return
    this.#state = 'ended'
    try {
      await this.transaction.executeRaw(statement('ROLLBACK'))
    } catch (error) {
      if (!saysNothingIsOpen(error)) throw error
    } finally {
      this.leave()
    }
  }
}

/** By what it says and not by its class: in a bundled server the adapter's error class is another copy than ours. */
const saysNothingIsOpen = (error: unknown): boolean =>
  isDriverAdapterError(error) && error.cause.originalMessage?.includes('no transaction is active') === true
