import type { FaultCode } from '@/lib/core/faults'

/** What SQLite calls it (an extended code begins with its plain one), the operating system, PostgreSQL and Prisma. */
const byStart: readonly (readonly [string, FaultCode])[] = [
  ['SQLITE_FULL', 'disk-full'],
  ['SQLITE_READONLY', 'read-only'],
  ['SQLITE_CORRUPT', 'damaged'],
  ['SQLITE_NOTADB', 'damaged'],
  ['SQLITE_IOERR_NOMEM', 'no-memory'],
  ['SQLITE_IOERR', 'disk-error'],
  ['SQLITE_BUSY', 'busy'],
  ['SQLITE_LOCKED', 'busy'],
  ['SQLITE_PROTOCOL', 'busy'],
  ['SQLITE_CANTOPEN', 'cannot-open'],
  ['SQLITE_NOMEM', 'no-memory'],
  ['SQLITE_CONSTRAINT_UNIQUE', 'taken'],
  ['SQLITE_CONSTRAINT_PRIMARYKEY', 'taken'],
  ['08', 'away'], // PostgreSQL, class 08: connection exception
]

const byCode: Readonly<Record<string, FaultCode>> = {
  // The operating system.
  ENOSPC: 'disk-full',
  EDQUOT: 'disk-full',
  EFBIG: 'disk-full',
  EROFS: 'read-only',
  EACCES: 'read-only',
  EPERM: 'read-only',
  EIO: 'disk-error',
  EMFILE: 'no-handles',
  ENFILE: 'no-handles',
  ENOMEM: 'no-memory',
  ECONNREFUSED: 'away',
  ECONNRESET: 'away',
  EPIPE: 'away',
  ETIMEDOUT: 'away',
  EHOSTUNREACH: 'away',
  ENETUNREACH: 'away',
  ENOTFOUND: 'away',
  EAI_AGAIN: 'away',
  // PostgreSQL, appendix "Error Codes" of its manual.
  '53100': 'disk-full',
  '53200': 'no-memory',
  '53300': 'busy', // too many connections
  '55P03': 'busy', // lock not available
  '57014': 'busy', // query canceled
  '25P03': 'busy', // idle in transaction session timeout
  '25006': 'read-only',
  '58030': 'disk-error',
  XX001: 'damaged',
  XX002: 'damaged',
  '57P01': 'away',
  '57P02': 'away',
  '57P03': 'away',
  '3D000': 'away',
  '40001': 'met',
  '40P01': 'met',
  '23505': 'taken',
  // Prisma's own reference of errors.
  P1001: 'away',
  P1002: 'away',
  P1008: 'busy',
  P1017: 'away',
  P2002: 'taken',
  P2024: 'busy',
  P2028: 'busy',
  P2034: 'met',
  P2037: 'busy',
}

/** An adapter's error that has no code of the database: its kind. */
const byKind: Readonly<Record<string, FaultCode>> = {
  DatabaseNotReachable: 'away',
  ConnectionClosed: 'away',
  TlsConnectionError: 'away',
  SocketTimeout: 'busy',
  TooManyConnections: 'busy',
  TransactionWriteConflict: 'met',
  UniqueConstraintViolation: 'taken',
}

/** What the driver of PostgreSQL says without any code. */
const bySaying: readonly (readonly [RegExp, FaultCode])[] = [
  [/^timeout exceeded when trying to connect/, 'away'],
  [/^Connection terminated/, 'away'],
  [/connection error and is not queryable$/, 'away'],
  [/^Client was closed and is not queryable/, 'away'],
]

/**
 * What is wrong with the machine or the database, told by its error; null: it is none of these. The database's own code
 * stands inside what Prisma throws, and says more than Prisma's.
 */
export function faultOf(error: unknown): FaultCode | null {
  const cause = part(part(part(error, 'meta'), 'driverAdapterError'), 'cause') ?? part(error, 'cause')
  return (
    ofCode(part(cause, 'originalCode')) ??
    ofCode(part(cause, 'code')) ??
    byKind[text(part(cause, 'kind'))] ??
    ofCode(part(error, 'code')) ??
    bySaying.find(([saying]) => saying.test(text(part(error, 'message'))))?.[1] ??
    null
  )
}

function ofCode(code: unknown): FaultCode | null {
  const said = text(code)
  return byCode[said] ?? byStart.find(([start]) => said !== '' && said.startsWith(start))?.[1] ?? null
}

const part = (of: unknown, name: string): unknown =>
  typeof of === 'object' && of !== null ? (of as Readonly<Record<string, unknown>>)[name] : undefined

const text = (value: unknown): string => (typeof value === 'string' ? value : '')
