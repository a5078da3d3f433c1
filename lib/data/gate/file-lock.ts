import { chmodSync, closeSync, existsSync, openSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import Database from 'better-sqlite3'

export type FileLock = { readonly release: () => void }

/**
 * Holds a SQLite file for this process. The lock is the operating system's own, on a small file beside the database,
 * so it ends with the process however that dies: nothing stale is ever left to take over, and no process id can be
 * mistaken for another. The id is only written down to be named in the refusal.
 */
export function lockFile(path: string): FileLock {
  makePrivateFile(`${path}.lock`)
  const lock = new Database(`${path}.lock`, { timeout: 0 })
  try {
    // Everything in memory: only the lock on the file matters, its content stays empty.
    lock.pragma('journal_mode = MEMORY')
    lock.exec('BEGIN EXCLUSIVE')
  } catch (error) {
    lock.close()
    if (isBusy(error)) throw new Error(heldMessage(path))
    throw error
  }
  writeFileSync(holderPath(path), String(process.pid), { mode: 0o600 })
  return {
    release: () => {
      rmSync(holderPath(path), { force: true })
      lock.close()
    },
  }
}

/**
 * There, and read by its owner alone, whatever the umask is. SQLite gives the files beside a database the same rights. On a
 * disk that can only be read nothing is changed: whoever writes will be told.
 */
export function makePrivateFile(path: string): void {
  try {
    if (!existsSync(path)) closeSync(openSync(path, 'a', 0o600))
    if ((statSync(path).mode & 0o077) !== 0) chmodSync(path, 0o600)
  } catch {
    return
  }
}

const holderPath = (path: string): string => `${path}.holder`

const isBusy = (error: unknown): boolean =>
  error instanceof Database.SqliteError && error.code.startsWith('SQLITE_BUSY')

function heldMessage(path: string): string {
  return (
    `${path} is in use by another Brasstag process${holderOf(path)}. ` +
    'Stop that one first; several processes on one database need PostgreSQL (DATABASE_URL).'
  )
}

function holderOf(path: string): string {
  try {
    return ` (process ${readFileSync(holderPath(path), 'utf8')})`
  } catch {
    return '' // it has just gone, or has not written its number yet
  }
}
