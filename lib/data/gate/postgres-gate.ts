import { PrismaPg } from '@prisma/adapter-pg'
import {
  isDriverAdapterError,
  type IsolationLevel,
  type SqlDriverAdapter,
  type SqlDriverAdapterFactory,
  type SqlQuery,
  type SqlResultSet,
  type Transaction,
} from '@prisma/driver-adapter-utils'
import { Turnstile, type Leave } from './turnstile'

/** No wait is for ever: a server that is not there, a lock, a transaction whose process has stopped. */
const limits = {
  connectionTimeoutMillis: 10_000,
  lock_timeout: 15_000,
  idle_in_transaction_session_timeout: 30_000,
  keepAlive: true,
} as const

/** Any number, the same in every process: the lock that a shop's transactions take, one after the other. */
const writersLock = 20_260_801

/**
 * The PostgreSQL adapter behind a gate, so that the transactions of a shop run one after the other as they do on SQLite,
 * however many processes there are: a rule that looks at rows before it writes (is a hold open, is the job paid) is never
 * looked at by two at once. Those of one process queue up here, so that the waiting ones hold no connection; the first of
 * each process waits for the lock in the database. Reading waits for nobody.
 */
export class GatedPostgres implements SqlDriverAdapterFactory {
  readonly provider = 'postgres'
  readonly adapterName = 'brasstag-gated-postgres'
  readonly #stock: PrismaPg

  constructor(url: string) {
    this.#stock = new PrismaPg({ connectionString: url, ...limits })
  }

  async connect(): Promise<SqlDriverAdapter> {
    return new GatedConnection(await this.#stock.connect())
  }
}

class GatedConnection implements SqlDriverAdapter {
  readonly provider = 'postgres'
  readonly adapterName = 'brasstag-gated-postgres'
  readonly #turnstile = new Turnstile()

  constructor(private readonly connection: SqlDriverAdapter) {}

  /** A connection that died while nobody used it is found out by its next query: reading is simply asked again. */
  async queryRaw(query: SqlQuery): Promise<SqlResultSet> {
    try {
      return await this.connection.queryRaw(query)
    } catch (error) {
      if (!isReading(query) || !isCut(error)) throw error
      return this.connection.queryRaw(query)
    }
  }

  executeRaw(query: SqlQuery): Promise<number> {
    return this.connection.executeRaw(query)
  }

  executeScript(script: string): Promise<void> {
    return this.connection.executeScript(script)
  }

  async startTransaction(isolationLevel?: IsolationLevel): Promise<Transaction> {
    const leave = await this.#turnstile.enter()
    try {
      return new GatedTransaction(await this.#begin(isolationLevel), leave)
    } catch (error) {
      leave()
      throw error
    }
  }

  async #begin(isolationLevel?: IsolationLevel): Promise<Transaction> {
    const transaction = await this.connection.startTransaction(isolationLevel)
    try {
      await transaction.executeRaw(statement(`SELECT pg_advisory_xact_lock(${writersLock})`))
      return transaction
    } catch (error) {
      // What is not rolled back here would be the next one's who is given this connection.
      await transaction.executeRaw(statement('ROLLBACK')).catch(() => undefined)
      await transaction.rollback()
      throw error
    }
  }

  getConnectionInfo() {
    return this.connection.getConnectionInfo?.() ?? { supportsRelationJoins: true }
  }

  dispose(): Promise<void> {
    return this.connection.dispose()
  }
}

/** Holds its place in the queue until the connection is given back. A connection does one statement at a time. */
class GatedTransaction implements Transaction {
  readonly provider = 'postgres'
  readonly adapterName = 'brasstag-gated-postgres'
  readonly #statements = new Turnstile()

  constructor(
    private readonly transaction: Transaction,
    private readonly leave: Leave,
  ) {}

  get options() {
    return this.transaction.options
  }

  queryRaw = (query: SqlQuery): Promise<SqlResultSet> => this.#statements.pass(() => this.transaction.queryRaw(query))
  executeRaw = (query: SqlQuery): Promise<number> => this.#statements.pass(() => this.transaction.executeRaw(query))
  createSavepoint = async (name: string): Promise<void> => this.transaction.createSavepoint?.(name)
  rollbackToSavepoint = async (name: string): Promise<void> => this.transaction.rollbackToSavepoint?.(name)
  releaseSavepoint = async (name: string): Promise<void> => this.transaction.releaseSavepoint?.(name)

  async commit(): Promise<void> {
    try {
      await this.transaction.commit()
    } finally {
      this.leave()
    }
  }

  async rollback(): Promise<void> {
    try {
      await this.transaction.rollback()
    } finally {
      this.leave()
    }
  }
}

const statement = (sql: string): SqlQuery => ({ sql, args: [], argTypes: [] })

const isReading = ({ sql }: SqlQuery): boolean => /^\s*SELECT\b/i.test(sql)

/** By what it says where the driver gives no code. */
function isCut(error: unknown): boolean {
  if (isDriverAdapterError(error)) return /^(?:57P0[12]|08)/.test(error.cause.originalCode ?? '')
  return error instanceof Error && /^Connection terminated|is not queryable$/.test(error.message)
}
