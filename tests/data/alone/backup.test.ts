import { createHash, randomUUID } from 'node:crypto'
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { gunzipSync, gzipSync } from 'node:zlib'
import { afterEach, beforeAll, describe, expect, inject, it, vi } from 'vitest'
import { makeBackup } from '@/lib/cli/backup/make-backup'
import { restoreBackup, carryOn } from '@/lib/cli/backup/restore-backup'
import { backupName, readBackupName } from '@/lib/data/backup/names'
import { backupsIn, readBackupState } from '@/lib/data/backup/state'
import { writeTarGz } from '@/lib/data/backup/tar-gz'
import { lockFile } from '@/lib/data/gate/file-lock'
import { freshDatabase } from '../../setup/database'
import { plainSqlite } from '../../setup/plain-sqlite'

vi.setConfig({ testTimeout: 120_000 })

// A rename is the only step by which anything is put in place: each of them can be the last one that is done.
const renames = vi.hoisted(() => ({ left: Infinity }))
vi.mock('node:fs', async (original) => {
  const actual = await original<typeof import('node:fs')>()
  const renameSync: typeof actual.renameSync = (from, to) => {
    if (renames.left-- <= 0) throw Object.assign(new Error('killed'), { code: 'EIO' })
    actual.renameSync(from, to)
  }
  return { ...actual, default: { ...actual, renameSync }, renameSync }
})
afterEach(() => {
  renames.left = Infinity
})

const nowMs = Date.parse('2026-03-04T02:10:00Z')
const counterSql = `INSERT INTO "Counter" (name, value) VALUES ('is', ?)`
const newFolder = (): string => mkdtempSync(join(inject('runFolder'), 'backup-'))
const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')

/** A shop with one row and one photo that say `what`. */
async function shopWith(what: number): Promise<{ url: string; folder: string; photo: string }> {
  const { url, folder } = await freshDatabase('sqlite')
  const photo = Buffer.from(`a picture of ${what}`)
  const sha256 = hashOf(photo)
  plainSqlite(url, (file) => {
    file.prepare(counterSql).run(what)
    file
      .prepare(`INSERT INTO "File" VALUES (?, ?, 'image/webp', '2026-03-02T08:00:00.000+00:00')`)
      .run(sha256, photo.length)
  })
  const path = join(folder, 'files', sha256.slice(0, 2), sha256)
  mkdirSync(dirname(path), { recursive: true })
  writeFileSync(path, photo)
  writeFileSync(join(folder, 'session-secret'), `secret of ${what}`)
  return { url, folder, photo: path }
}

/** What a data folder says, whole: its row, its photo and its secret belong together. */
function saidIn(folder: string): string[] {
  const rows = plainSqlite(`file:${folder}/brasstag.db`, (file) =>
    file.prepare(`SELECT c.value, f.sha256 FROM "Counter" c, "File" f`).all(),
  ) as { value: number; sha256: string }[]
  return rows.map(({ value, sha256 }) => {
    const photo = readFileSync(join(folder, 'files', sha256.slice(0, 2), sha256), 'utf8')
    return `${value}; ${photo}; ${readFileSync(join(folder, 'session-secret'), 'utf8')}`
  })
}
const saysOf = (what: number): string[] => [`${what}; a picture of ${what}; secret of ${what}`]

/** Every file with its hash, so that nothing can have changed unseen; locks and the backups themselves left out. */
const everythingIn = (folder: string): string[] =>
  (
    readdirSync(folder, { recursive: true, withFileTypes: true }) as {
      name: string
      parentPath: string
      isFile: () => boolean
    }[]
  )
    .filter(
      (entry) =>
        entry.isFile() && !/\.lock$|\.holder$|-shm$|-wal$/.test(entry.name) && !entry.parentPath.includes('backups'),
    )
    .map(({ name, parentPath }) => `${join(parentPath, name)} ${hashOf(readFileSync(join(parentPath, name)))}`)
    .sort()

let one: Awaited<ReturnType<typeof shopWith>>
let backup: string
beforeAll(async () => {
  one = await shopWith(1)
  backup = (await makeBackup({ url: one.url, data: one.folder, kind: 'nightly', nowMs })).path
})

describe('a backup', () => {
  it('is one file that only its owner reads, and says that it was opened and found whole', () => {
    expect(backup).toBe(join(one.folder, 'backups', 'brasstag-20260304-021000-nightly.tar.gz'))
    expect(statSync(backup).mode & 0o777).toBe(0o600)
    expect(statSync(dirname(backup)).mode & 0o777).toBe(0o700)
    expect(backupsIn(dirname(backup)).map(({ name, kind, atMs }) => ({ name, kind, atMs }))).toEqual([
      { name: backupName(nowMs, 'nightly'), kind: 'nightly', atMs: nowMs },
    ])
    const state = readBackupState(dirname(backup))
    expect(state.lastTry).toMatchObject({ kind: 'nightly', fault: '', secondFault: '', leftOut: 0 })
    expect(Object.keys(state.checkedMs)).toEqual([backupName(nowMs, 'nightly')])
    expect(state.running).toBeNull()
    expect(readdirSync(dirname(backup)).filter((name) => /part|unfinished/.test(name))).toEqual([])
  })

  it('is known by its name, and nothing else is', () => {
    expect(readBackupName(backupName(nowMs, 'by-hand'))).toEqual({
      ...{ name: 'brasstag-20260304-021000-by-hand.tar.gz', atMs: nowMs, kind: 'by-hand' },
    })
    for (const other of [
      'state.json',
      'brasstag-20260304-021000-other.tar.gz',
      'brasstag-20260304-021000-nightly.tar.gz.part',
    ]) {
      expect(readBackupName(other)).toBeNull()
    }
  })

  it('of a shop with a photo that is gone is made all the same, says so, and can be put back', async () => {
    const shop = await shopWith(3)
    rmSync(shop.photo)
    const made = await makeBackup({ url: shop.url, data: shop.folder, kind: 'by-hand', nowMs })
    expect(made.leftOut).toHaveLength(1)
    expect(readBackupState(dirname(made.path)).lastTry?.leftOut).toBe(1)
    const data = newFolder()
    expect((await restoreBackup({ path: made.path, data, nowMs })).leftOut).toBe(1)
  })

  it('is not made twice at once', async () => {
    const held = lockFile(join(one.folder, 'backups', 'making'))
    await expect(makeBackup({ url: one.url, data: one.folder, kind: 'by-hand', nowMs })).rejects.toThrow(
      'No backup was made: another one is being made just now.',
    )
    held.release()
  })

  it('has a copy on the stick, or says that the stick is not there', async () => {
    const stick = newFolder()
    const order = { url: one.url, data: one.folder, kind: 'nightly', nowMs } as const
    const made = await makeBackup({ ...order, second: stick })
    expect(made.secondFault).toBe('')
    expect(readFileSync(join(stick, backupName(nowMs, 'nightly'))).equals(readFileSync(made.path))).toBe(true)
    const gone = join(stick, 'not plugged in')
    const without = await makeBackup({ ...order, second: gone })
    expect(without.secondFault).toBe(`There is no copy in ${gone}: the folder is not there.`)
    expect(existsSync(gone)).toBe(false)
    expect(readBackupState(join(one.folder, 'backups')).lastTry?.secondFault).toBe(without.secondFault)
  })

  it('takes the place of those that need not be kept, here and on the stick', async () => {
    const shop = await shopWith(4)
    const stick = newFolder()
    const folders = [join(shop.folder, 'backups'), stick]
    const dayMs = 24 * 60 * 60 * 1000
    for (const folder of folders) {
      mkdirSync(folder, { recursive: true })
      for (let n = 1; n <= 100; n++) writeFileSync(join(folder, backupName(nowMs - n * dayMs, 'nightly')), 'old')
      writeFileSync(join(folder, 'my own notes.txt'), 'stay')
    }
    await makeBackup({ url: shop.url, data: shop.folder, kind: 'nightly', nowMs, second: stick })
    for (const folder of folders) {
      // Wednesday 4 March: days 26 February to 4 March; weeks 4 March, 1 March (a day already), 22 and 15 February;
      // months 4 March, 28 February (a day already), 31 January, 31 December, and 30 November, 94 days before.
      expect(backupsIn(folder).map(({ atMs }) => new Date(atMs).toISOString().slice(5, 10))).toEqual([
        ...['03-04', '03-03', '03-02', '03-01', '02-28', '02-27', '02-26'],
        ...['02-22', '02-15', '01-31', '12-31', '11-30'],
      ])
      expect(existsSync(join(folder, 'my own notes.txt'))).toBe(true)
    }
  })
})

describe('a restore', () => {
  it('sets aside what was there, and the two can be told apart', async () => {
    const two = await shopWith(2)
    const { aside } = await restoreBackup({ path: backup, data: two.folder, nowMs })
    expect(saidIn(two.folder)).toEqual(saysOf(1))
    expect(aside).toBe(join(two.folder, 'before-restore-20260304-021000'))
    expect(saidIn(aside ?? '')).toEqual(saysOf(2))
  })

  it('is refused while the shop runs', async () => {
    const two = await shopWith(2)
    const running = lockFile(join(two.folder, 'brasstag.db'))
    await expect(restoreBackup({ path: backup, data: two.folder, nowMs })).rejects.toThrow(
      'Nothing was restored: the shop is running. Stop Brasstag first, then restore. Nothing was changed.',
    )
    running.release()
    expect(saidIn(two.folder)).toEqual(saysOf(2))
  })

  it('killed at any step: what was there or the backup stands whole, and the next start carries on', async () => {
    const outcomes: string[] = []
    for (let after = 0; after < 12; after++) {
      const two = await shopWith(2)
      renames.left = after
      const ended = await restoreBackup({ path: backup, data: two.folder, nowMs }).then(
        () => 'done',
        (error: Error) => error.message,
      )
      renames.left = Infinity
      const said = await carryOn(two.folder)
      const stands = saidIn(two.folder)
      outcomes.push(stands[0]?.startsWith('1;') ? 'the backup' : 'what was there')
      expect(stands).toEqual(saysOf(outcomes.at(-1) === 'the backup' ? 1 : 2))
      expect(readdirSync(two.folder).filter((name) => /restor/.test(name) && !/^before-restore-/.test(name))).toEqual(
        [],
      )
      const isHalfWay = ended.startsWith('The backup is whole and is being put in place, but that stopped half way')
      expect(said).toEqual(isHalfWay ? expect.stringContaining('carried to its end') : null)
      if (outcomes.at(-1) === 'what was there')
        expect(ended).toMatch(/^Nothing could be restored: .*Nothing was changed\.$/)
      if (ended === 'done') break
    }
    // The journal is the first rename; database, files and secret take two each.
    expect(outcomes).toEqual(['what was there', ...Array.from({ length: 7 }, () => 'the backup')])
  })
})

describe('a damaged backup is refused before anything is touched', () => {
  const spoilt = (change: (bytes: Buffer) => Buffer): string => {
    const path = join(newFolder(), backupName(nowMs, 'nightly'))
    writeFileSync(path, change(readFileSync(backup)))
    return path
  }
  /** The archive's bytes, changed and packed again, so that gzip's own check has nothing to say. */
  const inside = (from: string, to: string) =>
    spoilt((bytes) => {
      const tar = gunzipSync(bytes)
      const at = tar.lastIndexOf(from)
      expect(at).toBeGreaterThan(0)
      tar.write(to, at, 'latin1')
      return gzipSync(tar, { level: 1 })
    })
  const middle = (bytes: Buffer) => Math.floor(bytes.length / 2)

  const cases: readonly (readonly [string, () => string, RegExp])[] = [
    ['empty', () => spoilt(() => Buffer.alloc(0)), /its end is missing|does not begin with its list/],
    [
      'no archive at all',
      () => spoilt(() => Buffer.from('my notes of the winter')),
      /its bytes are not what they were/,
    ],
    ['cut off', () => spoilt((bytes) => bytes.subarray(0, middle(bytes))), /its end is missing/],
    [
      'one bit turned over',
      () => spoilt((bytes) => (bytes.writeUInt8(bytes.readUInt8(middle(bytes)) ^ 16, middle(bytes)), bytes)),
      /its bytes are not what they were|is not what it was|its end is missing/,
    ],
    ['a row changed', () => inside('Counter', 'Kounter'), /is not what it was/],
    ['a photo changed', () => inside('a picture of 1', 'a picture of 7'), /a photo or paper is not what it was/],
    ['the secret changed', () => inside('secret of 1', 'secret of 7'), /session-secret is not what it was/],
    ['more rows promised', () => inside('"Counter":1', '"Counter":2'), /rows are missing/],
    ['another format', () => inside('"format":1', '"format":2'), /its list cannot be read/],
  ]

  it.each(cases)('%s', async (_, make, words) => {
    const two = await shopWith(2)
    const before = everythingIn(two.folder)
    const path = make()
    const refusal = await restoreBackup({ path, data: two.folder, nowMs }).catch((error: Error) => error.message)
    expect(refusal).toMatch(
      /^brasstag-20260304-021000-nightly\.tar\.gz is damaged and cannot be used: .*Nothing was changed\.$/s,
    )
    expect(refusal).toMatch(words)
    expect(everythingIn(two.folder)).toEqual(before)
    expect(saidIn(two.folder)).toEqual(saysOf(2))
  })

  it('one with a file that leads outside', async () => {
    const path = join(newFolder(), 'outside.tar.gz')
    const list = gunzipSync(readFileSync(backup))
    const manifest = list.subarray(512, 512 + parseInt(list.toString('latin1', 124, 135), 8))
    await writeTarGz(path, async (add) => {
      await add.bytes('manifest.json', manifest)
      await add.bytes('files/../../../outside', Buffer.from('a way out'))
    })
    const data = newFolder()
    await expect(restoreBackup({ path, data, nowMs })).rejects.toThrow(
      'files/../../../outside does not belong into a backup',
    )
    expect(existsSync(join(data, '..', 'outside'))).toBe(false)
  })

  it('one without its end, as if the disk had been full when it was copied', async () => {
    const path = join(newFolder(), 'cut.tar.gz')
    await writeTarGz(path, (add) => add.bytes('manifest.json', Buffer.from('{}')))
    await expect(restoreBackup({ path, data: newFolder(), nowMs })).rejects.toThrow('its list cannot be read')
  })

  it('one from a later version', async () => {
    const shop = await shopWith(1)
    plainSqlite(shop.url, (file) =>
      file
        .prepare(
          `INSERT INTO _prisma_migrations (id, checksum, finished_at, migration_name, applied_steps_count)
          VALUES (?, '', 1, '9999_of_tomorrow', 1)`,
        )
        .run(randomUUID()),
    )
    const { path } = await makeBackup({ url: shop.url, data: shop.folder, kind: 'by-hand', nowMs })
    const two = await shopWith(2)
    const before = everythingIn(two.folder)
    await expect(restoreBackup({ path, data: two.folder, nowMs })).rejects.toThrow(
      /^This backup was made by a newer Brasstag \(its database is at 9999_of_tomorrow, this program knows \d{4}_\w+\)\. Install/,
    )
    expect(everythingIn(two.folder)).toEqual(before)
  })
})
