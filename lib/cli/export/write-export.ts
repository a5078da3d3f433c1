import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import type { Writable } from 'node:stream'
import { csvOf } from '@/lib/core/money/csv'
import { filePart } from '@/lib/data/backup/manifest'
import { backupFolder } from '@/lib/data/backup/state'
import { tarGzInto, type Adding } from '@/lib/data/backup/tar-gz'
import { lockFile, type FileLock } from '@/lib/data/gate/file-lock'
import { filePathOf, providerOf } from '@/lib/data/gate/provider'
import { withPostgresRows, withSqliteRows } from '../backup/copy-database'
import type { RowSource, Table } from '../backup/rows'
import { dictionaryOf } from './dictionary'
import { goesAlong } from './left-out'
import { writeTable } from './table-files'

export type ExportOrder = {
  readonly url: string
  readonly data: string
  /** After each table and every few files: how many of how many are done. */
  readonly progress?: (done: number, of: number) => void
}

const readMe = `Everything of this shop, as one archive.

csv/          a table each, for a spreadsheet: UTF-8, cells in quotes. Text that a spreadsheet would
              take for a formula has an apostrophe before it.
json/         the same tables for a program. Moments are UTC (ISO 8601). Money is in the smallest
              unit (cents). A measurement has its value, the text as it was typed, and its unit.
files/        photos, logo and papers, named by the SHA-256 of what they hold: column sha256.
dictionary.*  what each table and column means.

Passwords, PINs, sessions, the tokens of links and what is sealed with the server's secret are
not in here, so the shop cannot be made again from it: that is what a backup is for.
It holds customers' personal data: keep it as you keep the shop.
`

/** All of the shop of one moment into a stream, as fast as it is read; little of it is in memory at a time. */
export async function writeExport(order: ExportOrder, target: Writable): Promise<void> {
  const folder = backupFolder(order.data)
  mkdirSync(folder, { recursive: true, mode: 0o700 })
  const lock = onlyOne(folder)
  try {
    for (const name of readdirSync(folder)) {
      if (name.startsWith('.export-')) rmSync(join(folder, name), { recursive: true }) // of one that was killed
    }
    const work = mkdtempSync(join(folder, '.export-'))
    try {
      await withRows(order.url, (source) => tarGzInto(target, (add) => fill(order, source, add, work)))
    } finally {
      rmSync(work, { recursive: true, force: true })
    }
  } finally {
    lock.release()
  }
}

function onlyOne(folder: string): FileLock {
  try {
    return lockFile(join(folder, 'exporting'))
  } catch (error) {
    const isHeld = error instanceof Error && error.message.includes('in use')
    throw isHeld ? new Error('everything is being taken along just now, by somebody else', { cause: error }) : error
  }
}

const withRows = (url: string, work: (source: RowSource) => Promise<void>): Promise<void> =>
  providerOf(url) === 'sqlite' ? withSqliteRows(filePathOf(url), work) : withPostgresRows(url, work)

async function fill(order: ExportOrder, source: RowSource, add: Adding, work: string): Promise<void> {
  const tables = (await source.tables()).filter(({ name }) => goesAlong(name))
  const files = await filesOf(source)
  let done = 0
  const step = (by: number) => order.progress?.((done += by), tables.length + files.length)
  await add.bytes('READ-ME.txt', Buffer.from(readMe))
  await addDictionary(add)
  for (const table of tables) {
    const paths = { csv: join(work, 'table.csv'), json: join(work, 'table.json') }
    await writeTable(source, table, paths)
    await add.file(`csv/${table.name}.csv`, paths.csv)
    await add.file(`json/${table.name}.json`, paths.json)
    for (const path of Object.values(paths)) rmSync(path)
    step(1)
  }
  for (const { sha256, type } of files) {
    const path = join(order.data, filePart(sha256))
    if (existsSync(path)) await add.bytes(`files/${sha256}${ends[type] ?? ''}`, readFileSync(path))
    step(1)
  }
}

async function addDictionary(add: Adding): Promise<void> {
  const known = dictionaryOf().filter(({ table, column }) => goesAlong(table, column === '' ? undefined : column))
  const heading = ['Table', 'Column', 'Kind', 'May be empty', 'Meaning']
  const rows = known.map(({ table, column, kind, mayBeEmpty, meaning }) => {
    return [table, column, kind, mayBeEmpty ? 'yes' : 'no', meaning]
  })
  await add.bytes('dictionary.csv', Buffer.from(csvOf([heading, ...rows])))
  await add.bytes('dictionary.json', Buffer.from(`${JSON.stringify(known, null, 1)}\n`))
}

const ends: Readonly<Record<string, string>> = {
  'image/jpeg': '.jpg',
  'image/png': '.png',
  'image/webp': '.webp',
  'application/pdf': '.pdf',
}

type StoredFile = { readonly sha256: string; readonly type: string }

async function filesOf(source: RowSource): Promise<StoredFile[]> {
  const table = (await source.tables()).find(({ name }) => name === 'File')
  if (!table) return []
  const place = (wanted: keyof StoredFile, { columns }: Table) => columns.findIndex(({ name }) => name === wanted)
  const found: StoredFile[] = []
  for await (const rows of source.rows(table)) {
    for (const row of rows)
      found.push({ sha256: String(row[place('sha256', table)]), type: String(row[place('type', table)]) })
  }
  return found
}
