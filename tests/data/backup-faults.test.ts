import { spawn, type ChildProcess } from 'node:child_process'
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { createHash, randomBytes } from 'node:crypto'
import { dirname, join } from 'node:path'
import { expect, it, vi } from 'vitest'
import { makeBackup } from '@/lib/cli/backup/make-backup'
import { carryOn } from '@/lib/cli/backup/restore-backup'
import { readBackupState } from '@/lib/data/backup/state'
import { freshDatabase } from '../setup/database'
import { inLongRun } from '../setup/long-run'
import { plainSqlite } from '../setup/plain-sqlite'

// Each of these starts processes, which takes its time on a busy machine.
vi.setConfig({ testTimeout: 240_000 })

const nowMs = Date.parse('2026-03-04T02:10:00Z')
const root = join(import.meta.dirname, '..', '..')
const photoBytes = 3_000_000

/** A shop with one large photo, which no packing makes smaller. */
async function shopWithPhoto(): Promise<{ url: string; folder: string }> {
  const { url, folder } = await freshDatabase('sqlite')
  const photo = randomBytes(photoBytes)
  const sha256 = createHash('sha256').update(photo).digest('hex')
  plainSqlite(url, (file) =>
    file
      .prepare(`INSERT INTO "File" VALUES (?, ?, 'image/webp', '2026-03-02T08:00:00.000+00:00')`)
      .run(sha256, photoBytes),
  )
  const path = join(folder, 'files', sha256.slice(0, 2), sha256)
  mkdirSync(dirname(path), { recursive: true })
  writeFileSync(path, photo)
  return { url, folder }
}

type End = { readonly code: number | null; readonly signal: string | null; readonly said: string }

type Hearing = {
  readonly most?: number
  readonly at?: string
  readonly hear?: (said: string, child: ChildProcess) => void
}

/** A command of ours by itself; `most`: the largest file that it may write, in blocks of 512 bytes. `at`: what it says when it is killed. */
function commandIn(
  data: string,
  args: readonly string[],
  { most = 0, at = '', hear: heard }: Hearing = {},
): Promise<End> {
  const { DATABASE_URL: _url, ...env } = process.env
  const node = `exec "${process.execPath}" --conditions=react-server --import tsx "$@"`
  const limit = most > 0 ? `ulimit -f ${most}; ` : ''
  const child = spawn('sh', ['-c', limit + node, 'sh', ...args], { cwd: root, env: { ...env, BRASSTAG_DATA: data } })
  let said = ''
  const hear = (piece: Buffer) => {
    said += String(piece)
    if (at !== '' && said.includes(at)) child.kill('SIGKILL')
    heard?.(said, child)
  }
  child.stdout.on('data', hear)
  child.stderr.on('data', hear)
  return new Promise((resolve) => child.on('close', (code, signal) => resolve({ code, signal, said })))
}

const inBackups = (folder: string): string[] =>
  readdirSync(join(folder, 'backups')).filter((name) => !/^making\.|^state\.json$/.test(name))

it('a backup that is killed half way leaves none, and the next one is whole', async () => {
  const { url, folder } = await shopWithPhoto()
  expect(await commandIn(folder, ['lib/cli/backup.ts'], { at: 'packing' })).toMatchObject({ signal: 'SIGKILL' })
  expect(inBackups(folder).filter((name) => name.endsWith('.tar.gz'))).toEqual([])
  await makeBackup({ url, data: folder, kind: 'nightly', nowMs })
  expect(inBackups(folder)).toEqual(['brasstag-20260304-021000-nightly.tar.gz'])
})

it('a disk that is full half way: no backup and said so; then no restore, and what was there stands', async () => {
  const { url, folder } = await shopWithPhoto()
  const most = Math.floor(photoBytes / 2 / 512) // more than the database, less than the photo
  const failed = await commandIn(folder, ['lib/cli/backup.ts'], { most })
  expect(failed).toMatchObject({ code: 1 })
  expect(failed.said).toContain('No backup was made: the file would be larger than this user may write.\n')
  expect(inBackups(folder)).toEqual([])
  expect(readBackupState(join(folder, 'backups')).lastTry?.fault).toMatch(
    /^No backup was made: the file would be larger/,
  )

  const { path } = await makeBackup({ url, data: folder, kind: 'by-hand', nowMs })
  const other = await freshDatabase('sqlite')
  const before = readFileSync(join(other.folder, 'brasstag.db'))
  const refused = await commandIn(other.folder, ['lib/cli/restore.ts', path], { most })
  expect(refused).toMatchObject({ code: 1 })
  expect(refused.said).toContain(
    'Nothing could be restored: the file would be larger than this user may write. Nothing was changed.\n',
  )
  expect(readFileSync(join(other.folder, 'brasstag.db')).equals(before)).toBe(true)
  expect(readdirSync(other.folder).filter((name) => name !== 'brasstag.db.lock')).toEqual(['brasstag.db'])
})

const rounds = inLongRun ? 10 : 1

it(`a restore that is killed at some moment, ${rounds} ×: the shop is whole, the old one or the new, and the start says which`, async () => {
  const { url, folder } = await shopWithPhoto()
  const { path } = await makeBackup({ url, data: folder, kind: 'by-hand', nowMs })
  const wholeMs = inLongRun ? (await restoredOver(path, Infinity)).tookMs : 0
  const ends: string[] = []
  for (let round = 0; round < rounds; round++) {
    // Before its first word nothing is touched; the one of the short run is killed right after it.
    const { data, wasKilled } = await restoredOver(path, Math.random() * wholeMs)
    const isDecided = existsSync(join(data, 'restore-under-way.json'))
    const said = await carryOn(data) // as every start does first
    expect(said === null).toBe(!isDecided)
    const rows = plainSqlite(`file:${data}/brasstag.db`, (file) => ({
      whole: file.pragma('integrity_check', { simple: true }),
      files: file.prepare('SELECT sha256 FROM "File"').pluck().all() as string[],
      mine: file.prepare('SELECT name FROM "Counter"').pluck().all(),
    }))
    expect(rows.whole).toBe('ok')
    const isNew = rows.files.length === 1
    expect(rows.mine).toEqual(isNew ? [] : ['the old one'])
    if (isNew) expect(hashIn(data, rows.files[0] ?? '')).toBe(rows.files[0])
    ends.push(`${isNew ? 'new' : 'old'}${wasKilled ? '' : ', not killed'}`)
  }
  expect(ends).toHaveLength(rounds)
  if (!inLongRun) expect(ends[0]).toBe('old')
})

const hashIn = (data: string, sha256: string): string =>
  createHash('sha256')
    .update(readFileSync(join(data, 'files', sha256.slice(0, 2), sha256)))
    .digest('hex')

/** A restore over another shop, killed so long after it began to open the backup; how long that part took when it was not. */
async function restoredOver(path: string, killedMs: number) {
  const { url, folder: data } = await freshDatabase('sqlite')
  plainSqlite(url, (file) => file.exec(`INSERT INTO "Counter" (name, value) VALUES ('the old one', 1)`))
  let beganMs = 0
  const end = await commandIn(data, ['lib/cli/restore.ts', path, data], {
    hear: (said, child) => {
      if (beganMs > 0 || !said.includes('Opening the backup')) return
      beganMs = performance.now()
      if (killedMs !== Infinity) setTimeout(() => child.kill('SIGKILL'), killedMs)
    },
  })
  return { data, wasKilled: end.signal === 'SIGKILL', tookMs: performance.now() - beganMs }
}
