import { closeSync, existsSync, openSync, readdirSync, readSync, statSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { backupFolder, backupsIn, readBackupState, type BackupFile } from '@/lib/data/backup/state'
import { faultWords } from './fault-words'

/**
 * Looks at all of the database's pages before anything else touches it: a damaged one is refused in one line that names the
 * newest backup. All pages are looked at and not a sample: with 100,000 heads (660 MB) that took 1.4 s of a machine that had
 * the file in memory; the indexes' order and the foreign keys (9 s) are left to the nightly backup.
 */
export function checkAtStart(path: string, data: string, second = ''): void {
  const fault = existsSync(path) && statSync(path).size > 0 ? faultOf(path) : missing(path, data)
  if (fault !== '') throw new Error(`${fault} ${wayBack(data, second)}`)
}

/** A first start has no file yet, or an empty one when it was stopped; then there is nothing else of a shop either. */
function missing(path: string, data: string): string {
  const isEmpty = (folder: string) => !existsSync(folder) || readdirSync(folder).length === 0
  if (isEmpty(join(data, 'files')) && backupsIn(backupFolder(data)).length === 0) return ''
  const what = existsSync(path) ? 'is empty' : 'is missing'
  return `The database ${path} ${what}, though the shop's files are there (is it on PostgreSQL? then set DATABASE_URL).`
}

const opening = 'SQLite format 3\0'

function faultOf(path: string): string {
  const damaged = (why: string) => `The database ${path} is damaged: ${why}.`
  try {
    if (firstBytes(path) !== opening) return damaged('it does not begin as a database does')
    const file = new Database(path, { readonly: true })
    try {
      const said = file.pragma('quick_check(1)', { simple: true }) as string
      return said === 'ok' ? '' : damaged(pageIn(said))
    } finally {
      file.close()
    }
  } catch (error) {
    if (isOfContent(error)) return damaged(pageIn(error.message))
    return `The database ${path} cannot be read: ${faultWords(error)}.`
  }
}

function firstBytes(path: string): string {
  const bytes = Buffer.alloc(opening.length)
  const file = openSync(path, 'r')
  try {
    readSync(file, bytes, 0, bytes.length, 0)
  } finally {
    closeSync(file)
  }
  return bytes.toString('latin1')
}

/** By its code: what is in the file, and not whether it may be opened. */
const isOfContent = (error: unknown): error is Error =>
  error instanceof Error &&
  'code' in error &&
  /^SQLITE_(?:CORRUPT|NOTADB|ERROR|IOERR_SHORT_READ)/.test(String(error.code))

/** SQLite names the page that it stopped at, in words that are not for a shop. */
function pageIn(said: string): string {
  const page = /\bpage (\d+)/i.exec(said)?.[1]
  return page === undefined ? 'its pages do not belong together' : `page ${page} is not what it should be`
}

function wayBack(data: string, second: string): string {
  const all = [...backupsIn(backupFolder(data)), ...(second === '' ? [] : backupsIn(second))]
  const newest = all.toSorted((a, b) => b.atMs - a.atMs)[0]
  if (!newest) return 'No backup was found. Keep the folder as it is, and restore from wherever you have one.'
  const made = new Date(newest.atMs).toISOString().slice(0, 16).replace('T', ' ')
  return `The newest backup is of ${made} UTC${checkedWords(newest, data)}: npm run restore ${newest.path} ${data}`
}

const checkedWords = ({ name }: BackupFile, data: string): string =>
  readBackupState(backupFolder(data)).checkedMs[name] === undefined ? '' : ', found whole when it was made'
