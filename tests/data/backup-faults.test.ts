import { spawn } from 'node:child_process'
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { createHash, randomBytes } from 'node:crypto'
import { dirname, join } from 'node:path'
import { expect, it, vi } from 'vitest'
import { makeBackup } from '@/lib/cli/backup/make-backup'
import { readBackupState } from '@/lib/data/backup/state'
import { freshDatabase } from '../setup/database'
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

/** A command of ours by itself; `most`: the largest file that it may write, in blocks of 512 bytes. `at`: what it says when it is killed. */
function commandIn(data: string, args: readonly string[], { most = 0, at = '' } = {}): Promise<End> {
  const { DATABASE_URL: _url, ...env } = process.env
  const node = `exec "${process.execPath}" --conditions=react-server --import tsx "$@"`
  const limit = most > 0 ? `ulimit -f ${most}; ` : ''
  const child = spawn('sh', ['-c', limit + node, 'sh', ...args], { cwd: root, env: { ...env, BRASSTAG_DATA: data } })
  let said = ''
  const hear = (piece: Buffer) => {
    said += String(piece)
    if (at !== '' && said.includes(at)) child.kill('SIGKILL')
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
