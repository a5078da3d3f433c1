import Database from 'better-sqlite3'
import { filePathOf } from '@/lib/data/gate/provider'

/** The file itself, past the client: to spoil something in it, or to look at what is really there. */
export function plainSqlite<T>(url: string, work: (file: Database.Database) => T): T {
  const file = new Database(filePathOf(url))
  try {
    return work(file)
  } finally {
    file.close()
  }
}
