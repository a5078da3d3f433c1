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
import { lockFile, type FileLock } from './file-lock'
import { filePathOf } from './provider'
import { secureConnection } from './sqlite-settings'
import { Turnstile, type Leave } from './turnstile'

/**
 * The SQLite adapter behind a gate. The stock adapter has one connection, and a query outside a transaction runs
 * inside whichever interactive transaction happens to be open: it sees uncommitted rows, and its own acknowledged
 * write is undone by that transaction's rollback. Here everything outside waits until the open transaction has ended.
 */
export class GatedSqlite implements SqlMigrationAwareDriverAdapterFactory {
  readonly provider = 'sqlite'
  readonly adapterName = 'brasstag-gated-sqlite'
  readonly #path: string
  readonly #stock: PrismaBetterSqlite3

  constructor(url: string) {
    this.#path = filePathOf(url)
    this.#stock = new PrismaBetterSqlite3({ url })
  }

  async connect(): Promise<SqlDriverAdapter> {
    const lock = lockFile(this.#path)
    try {
      const connection = await this.#stock.connect()
      await secureConnection(connection)
      return new GatedConnection(connection, lock)
    } catch (error) {
      lock.release()
      throw error
    }
  }

  connectToShadowDb(): Promise<SqlDriverAdapter> {
    return this.#stock.connectToShadowDb()
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

  queryRaw(query: SqlQuery): Promise<SqlResultSet> {
    return this.#turnstile.pass(() => this.connection.queryRaw(query))
  }

  executeRaw(query: SqlQuery): Promise<number> {
    return this.#turnstile.pass(() => this.connection.executeRaw(query))
  }

  executeScript(script: string): Promise<void> {
    return this.#turnstile.pass(() => this.connection.executeScript(script))
  }

  async startTransaction(isolationLevel?: IsolationLevel): Promise<Transaction> {
    const leave = await this.#turnstile.enter()
    try {
      const transaction = await this.connection.startTransaction(isolationLevel)
      return new GatedTransaction(transaction, leave)
    } catch (error) {
      leave()
      throw error
    }
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

type State = 'open' | 'ending' | 'ended'

/**
 * Holds the gate from BEGIN until it has ended, and makes sure that it has. A query that comes after the end (the rest
 * of a statement that a time limit cut short) is refused: on the shared connection it would be written for good.
 */
class GatedTransaction implements Transaction {
  readonly provider = 'sqlite'
  readonly adapterName = 'brasstag-gated-sqlite'
  #state: State = 'open'

  constructor(
    private readonly transaction: Transaction,
    private readonly leave: Leave,
  ) {}

  get options() {
    return this.transaction.options
  }

  async queryRaw(query: SqlQuery): Promise<SqlResultSet> {
    this.#refuseUnlessOpen()
    return this.transaction.queryRaw(query)
  }

  async executeRaw(query: SqlQuery): Promise<number> {
    this.#refuseUnlessOpen()
    if (query.sql === 'COMMIT' || query.sql === 'ROLLBACK') this.#state = 'ending'
    return this.transaction.executeRaw(query)
  }

  createSavepoint = (name: string) => this.#savepoint(`SAVEPOINT ${name}`)
  rollbackToSavepoint = (name: string) => this.#savepoint(`ROLLBACK TO ${name}`)
  releaseSavepoint = (name: string) => this.#savepoint(`RELEASE SAVEPOINT ${name}`)

  async #savepoint(sql: string): Promise<void> {
    await this.executeRaw({ sql, args: [], argTypes: [] })
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
      await this.transaction.executeRaw({ sql: 'ROLLBACK', args: [], argTypes: [] })
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
