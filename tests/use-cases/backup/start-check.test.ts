import {
  chmodSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, inject, it } from 'vitest'
import { makeBackup } from '@/lib/cli/backup/make-backup'
import { checkAtStart } from '@/lib/cli/backup/start-check'
import { makePrivate } from '@/lib/cli/private-files.mjs'
import { makeFolder } from '@/lib/cli/settings.mjs'
import { freshDatabase } from '../../setup/database'
import { plainSqlite } from '../../setup/plain-sqlite'

const nowMs = Date.parse('2026-03-04T02:10:00Z')
const pageBytes = 4096
const backupName = 'brasstag-20260304-021000-nightly.tar.gz'

let whole: string
beforeAll(async () => {
  const { url, folder } = await freshDatabase('sqlite')
  plainSqlite(url, (file) => {
    const insert = file.prepare(`INSERT INTO "Counter" (name, value) VALUES (?, ?)`)
    file.transaction(() => {
      for (let n = 0; n < 5000; n++) insert.run(`a counter with a name of some length ${n}`, n)
    })()
  })
  await makeBackup({ url, data: folder, kind: 'nightly', nowMs })
  whole = folder
})

/** A copy of the shop, in which something was done to its database. */
function shopWith(change: (path: string) => void): { path: string; data: string } {
  const data = mkdtempSync(join(inject('runFolder'), 'start-'))
  cpSync(whole, data, { recursive: true })
  const path = join(data, 'brasstag.db')
  change(path)
  return { path, data }
}

const overwrite = (path: string, from: number, bytes: Buffer): void => {
  const all = readFileSync(path)
  bytes.copy(all, from)
  writeFileSync(path, all)
}
/** The same garbage each time; no byte of it is a kind of page that SQLite knows. */
const garbage = (size: number): Buffer => Buffer.from(Array.from({ length: size }, (_, n) => 0x60 + ((n * 7) % 31)))

const refusal = ({ path, data }: { path: string; data: string }): string => {
  try {
    checkAtStart(path, data)
    return ''
  } catch (error) {
    return (error as Error).message
  }
}

describe('the look at the database before a start', () => {
  it('has nothing to say of a whole one, nor of a folder in which nothing is yet', () => {
    expect(refusal(shopWith(() => undefined))).toBe('')
    const data = mkdtempSync(join(inject('runFolder'), 'new-'))
    expect(refusal({ path: join(data, 'brasstag.db'), data })).toBe('')
    writeFileSync(join(data, 'brasstag.db'), '')
    expect(refusal({ path: join(data, 'brasstag.db'), data })).toBe('')
  })

  const middle = (path: string) => Math.floor(statSync(path).size / 2 / pageBytes) * pageBytes
  it.each<[string, (path: string) => void, RegExp]>([
    [
      'garbage in the header',
      (path) => overwrite(path, 0, garbage(100)),
      /is damaged: it does not begin as a database/,
    ],
    ['a header with another size', (path) => overwrite(path, 28, Buffer.from([0, 0, 0, 2])), /is damaged: /],
    [
      '16 kB of garbage in the middle',
      (path) => overwrite(path, middle(path), garbage(16_384)),
      /is damaged: page \d+ is/,
    ],
    ['one page of zeros', (path) => overwrite(path, middle(path), Buffer.alloc(pageBytes)), /is damaged: page \d+ is/],
    ['half of it', (path) => truncateSync(path, middle(path)), /is damaged: /],
    ['all but the last page', (path) => truncateSync(path, statSync(path).size - pageBytes), /is damaged: /],
    ['an empty file', (path) => truncateSync(path, 0), /is empty, though the shop's files are there/],
    ['no file', (path) => rmSync(path), /is missing, though the shop's files are there/],
  ])('%s: one line, with the newest backup', (_, change, words) => {
    const shop = shopWith(change)
    const said = refusal(shop)
    expect(said).toMatch(words)
    expect(said).not.toContain('\n')
    expect(said).toContain(
      `The newest backup is of 2026-03-04 02:10 UTC, found whole when it was made: ` +
        `npm run restore ${shop.data}/backups/${backupName} ${shop.data}`,
    )
  })

  it('looks at the second folder too, and says where there is no backup at all', () => {
    const shop = shopWith((path) => truncateSync(path, 0))
    const stick = mkdtempSync(join(inject('runFolder'), 'stick-'))
    writeFileSync(join(stick, 'brasstag-20260305-021000-nightly.tar.gz'), '')
    expect(() => checkAtStart(shop.path, shop.data, stick)).toThrow(`npm run restore ${stick}/brasstag-20260305`)
    rmSync(join(shop.data, 'backups'), { recursive: true })
    writeFileSync(shop.path, garbage(50_000))
    expect(refusal(shop)).toMatch(/No backup was found\. Keep the folder as it is/)
  })
})

it('a data folder is closed to others, whatever it was; what is not ours is left alone', () => {
  const shop = shopWith(() => undefined)
  const modeOf = (...path: string[]) => (statSync(join(shop.data, ...path)).mode & 0o777).toString(8)
  mkdirSync(join(shop.data, 'files', 'ab'), { recursive: true })
  writeFileSync(join(shop.data, 'session-secret'), '')
  writeFileSync(join(shop.data, 'notes.txt'), '')
  const open = ['', 'brasstag.db', 'session-secret', 'notes.txt', 'files', 'files/ab', 'backups']
  for (const name of open) chmodSync(join(shop.data, name), 0o777)
  const umask = process.umask(0)
  makePrivate(shop.data)
  expect(process.umask(umask)).toBe(0o077)
  expect(open.map((name) => modeOf(name))).toEqual(['700', '600', '600', '777', '700', '700', '700'])
})

it('a data folder that cannot be made is said in words, with what to do', () => {
  const folder = join(mkdtempSync(join(inject('runFolder'), 'no-folder-')), 'a-file')
  writeFileSync(folder, '')
  const words = `The data folder ${folder} cannot be used: a file stands in its place. Put that right, or name another`
  expect(() => makeFolder({ folder })).toThrow(words)
  expect(() => makeFolder({ folder: join(folder, 'inside') })).toThrow('a file stands in its place')
})
