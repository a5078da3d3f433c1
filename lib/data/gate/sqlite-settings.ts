import type { SqlDriverAdapter } from '@prisma/driver-adapter-utils'

/** The first version with the repair of a rare loss of a write-ahead log that is reset while it is being read. */
const oldestSqlite = [3, 51, 3] as const

/** Set and then read back: a setting that did not take is a refusal to start, never a silent default. */
const settings: readonly { readonly name: string; readonly set: string; readonly reads: string }[] = [
  { name: 'journal_mode', set: 'WAL', reads: 'wal' },
  { name: 'synchronous', set: 'FULL', reads: '2' },
  { name: 'foreign_keys', set: 'ON', reads: '1' },
  // SQLite's own waiting would hold up the whole server: whoever finds the file locked waits outside (when-free.ts).
  { name: 'busy_timeout', set: '0', reads: '0' },
  // A large sort would need room on the disk, and a file handle: reading goes on without either.
  { name: 'temp_store', set: 'MEMORY', reads: '2' },
  // Without it INSERT OR REPLACE removes the old row past the triggers that forbid removal.
  { name: 'recursive_triggers', set: 'ON', reads: '1' },
]

export async function secureConnection(connection: SqlDriverAdapter): Promise<void> {
  refuseOldSqlite(await firstValue(connection, 'SELECT sqlite_version()'))
  for (const { name, set, reads } of settings) {
    await firstValue(connection, `PRAGMA ${name} = ${set}`)
    const now = await firstValue(connection, `PRAGMA ${name}`)
    if (now !== reads)
      throw new Error(`SQLite did not take ${name} = ${set} (it says ${now}). Brasstag does not start.`)
  }
}

export function refuseOldSqlite(version: string): void {
  const parts = version.split('.').map(Number)
  const difference = oldestSqlite.map((oldest, i) => (parts[i] ?? 0) - oldest).find((step) => step !== 0) ?? 0
  if (difference < 0 || parts.some(Number.isNaN)) {
    throw new Error(
      `SQLite ${version} is too old: Brasstag needs ${oldestSqlite.join('.')} or newer. Run npm ci to get the one it comes with.`,
    )
  }
}

async function firstValue(connection: SqlDriverAdapter, sql: string): Promise<string> {
  const { rows } = await connection.queryRaw({ sql, args: [], argTypes: [] })
  return String(rows[0]?.[0] ?? '')
}
