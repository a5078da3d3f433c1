import Database from 'better-sqlite3'
import { filePathOf } from '@/lib/data/gate/provider'

/** Another program begins to write in a SQLite file and does not go on. Gives what lets go of it. */
export function heldByAnother(url: string): () => void {
  const other = new Database(filePathOf(url), { timeout: 0 })
  other.exec('BEGIN IMMEDIATE')
  return () => {
    other.exec('ROLLBACK')
    other.close()
  }
}
