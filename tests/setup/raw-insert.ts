import { rmSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { median } from '../bench/measure'

/** Milliseconds of one durable insert, each in a transaction of its own, on the disk where the folder is. */
export function msOfInsert(folder: string): number {
  const path = join(folder, 'raw.db')
  const file = new Database(path)
  try {
    file.pragma('journal_mode = WAL')
    file.pragma('synchronous = FULL')
    file.exec('CREATE TABLE raw (id INTEGER PRIMARY KEY, text TEXT)')
    const insert = file.prepare('INSERT INTO raw (text) VALUES (?)')
    const times = Array.from({ length: 200 }, () => {
      const began = performance.now()
      insert.run('one line')
      return performance.now() - began
    })
    return median(times.slice(50))
  } finally {
    file.close()
    for (const end of ['', '-wal', '-shm']) rmSync(`${path}${end}`, { force: true })
  }
}
