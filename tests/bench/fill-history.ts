import { join } from 'node:path'
import { fillHeads } from '../setup/filled-shop'
import { plainSqlite } from '../setup/plain-sqlite'

/** Puts heads that were here long ago into a shop that is filled already: the data folder, how many, readings of each. */
const [folder = '', count = '0', each = '0'] = process.argv.slice(2)
const now = new Date()
const atOnce = 2_000

plainSqlite(`file:${join(folder, 'brasstag.db')}`, (file) => {
  // A shop that is thrown away afterwards: it need not outlive a power cut. Rows go into indexes all over the file.
  file.pragma('synchronous = OFF')
  file.pragma('cache_size = -1000000')
  // Nobody is asked about in these rows: those who did the work then are one person.
  const columns = `id, name, signIn, passwordHash, roles, grants, createdAt`
  const stored = now.toISOString().replace('Z', '+00:00')
  file
    .prepare(`INSERT INTO "Person" (${columns}) VALUES ('person', 'Earlier staff', 'earlier-staff', '', '', '', ?)`)
    .run(stored)
  for (let from = 0; from < Number(count); from += atOnce) {
    fillHeads(file, from, Math.min(atOnce, Number(count) - from), now, Number(each))
  }
})
