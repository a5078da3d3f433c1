import { spawn } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { createHash } from 'node:crypto'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, inject, it, vi } from 'vitest'
import { readManifest } from '@/lib/cli/backup/open-backup'
import { restoreBackup } from '@/lib/cli/backup/restore-backup'
import { applyMigrations } from '@/lib/cli/schema-engine'
import { backupsIn } from '@/lib/data/backup/state'
import { lockFile } from '@/lib/data/gate/file-lock'
import { bundled } from '../setup/bundled'
import { emptyDatabase } from '../setup/database'
import { elsewhereRun } from '../setup/elsewhere'
import { plainSqlite } from '../setup/plain-sqlite'

// Each of these starts processes, which takes its time on a busy machine.
vi.setConfig({ testTimeout: 240_000 })

const root = join(import.meta.dirname, '..', '..')
const secret = 'only for the tests, and long enough to be taken'
let folder: string
const prepare = (mode: string, data = folder) =>
  elsewhereRun('lib/cli/prepare.ts', [mode], { BRASSTAG_DATA: data, NEXTAUTH_SECRET: secret })
const database = () => `file:${join(folder, 'brasstag.db')}`

beforeAll(() => {
  folder = mkdtempSync(join(inject('runFolder'), 'shop-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

type ShopAnswer = { ownerCode?: string }

describe('a start of a real shop', () => {
  let first: ShopAnswer

  it('makes the database and a code for the first owner, of which only the hash is kept', async () => {
    const { ok, answer } = await prepare('shop')
    expect(ok).toBe(true)
    first = JSON.parse(answer) as ShopAnswer
    expect(first.ownerCode).toMatch(/^[A-Z2-9]{4}-[A-Z2-9]{4}-[A-Z2-9]{4}$/)
    const kept = join(folder, 'owner-code.sha256')
    expect(readFileSync(kept, 'utf8')).toBe(
      createHash('sha256')
        .update(first.ownerCode ?? '')
        .digest('hex'),
    )
    expect(statSync(kept).mode & 0o777).toBe(0o600)
    expect(plainSqlite(database(), (file) => file.prepare('SELECT mode FROM "Shop"').all())).toEqual([{ mode: 'shop' }])
    for (const name of ['brasstag.db', 'brasstag.db.lock'])
      expect(statSync(join(folder, name)).mode & 0o777).toBe(0o600)
  })

  it('starts again, with another code, and keeps the data', async () => {
    plainSqlite(database(), (file) => file.exec(`INSERT INTO "Counter" (name, value) VALUES ('mine', 412)`))
    const { ok, answer, said } = await prepare('shop')
    expect(ok).toBe(true)
    expect(said).toBe('') // nothing to bring up to date
    const second = JSON.parse(answer) as ShopAnswer
    expect(second.ownerCode).toBeDefined()
    expect(second.ownerCode).not.toBe(first.ownerCode)
    const kept = plainSqlite(database(), (file) => file.prepare('SELECT * FROM "Counter"').all())
    expect(kept).toEqual([{ name: 'mine', value: 412 }])
  })

  it('gives no code once somebody is there', async () => {
    plainSqlite(database(), (file) =>
      file.exec(
        `INSERT INTO "Person" (id, name, "signIn", "passwordHash", roles, grants, "createdAt")
         VALUES ('p', 'Somebody', 'somebody', '', 'owner', '', '2026-03-02T08:00:00Z')`,
      ),
    )
    const { answer } = await prepare('shop')
    expect(JSON.parse(answer)).toEqual({})
  })

  it('gives an owner who lost the password a link from the console, once the server is stopped', async () => {
    const ask = (name: string) => elsewhereRun('lib/cli/reset-link.ts', [name], { BRASSTAG_DATA: folder })
    const lock = lockFile(join(folder, 'brasstag.db')) // a server at work
    const held = await ask('somebody')
    lock.release()
    expect([held.code, held.answer]).toEqual([1, ''])
    expect(held.said).toBe('No link was made: Brasstag is running. Stop it, make the link, then start it again.\n')
    const { ok, answer } = await ask('Somebody')
    expect(ok).toBe(true)
    const token = /^ {2}http:\/\/127\.0\.0\.1:3000\/reset\/([\w-]{32})$/m.exec(answer)?.[1] ?? ''
    const hash = createHash('sha256').update(token).digest('hex')
    const kept = plainSqlite(database(), (file) => [
      ...file.prepare(`SELECT "personId", "byId", "tokenHash" FROM "ResetLink"`).all(),
      ...file.prepare(`SELECT "actorId", "action", "subjectId" FROM "AuditEntry"`).all(),
    ])
    expect(kept).toEqual([
      { personId: 'p', byId: 'console', tokenHash: hash },
      { actorId: 'console', action: 'person.make-reset-link', subjectId: 'p' },
    ])
  })

  it('is not started as a demo: one clear line, and nothing is touched', async () => {
    const before = readFileSync(join(folder, 'brasstag.db'))
    const { ok, said, answer } = await prepare('demo')
    expect(ok).toBe(false)
    expect(answer).toBe('')
    expect(said).toBe(
      `${folder} holds a real shop: start it with npm run shop, or name another folder with BRASSTAG_DATA.\n`,
    )
    expect(readFileSync(join(folder, 'brasstag.db')).equals(before)).toBe(true)
    expect(existsSync(join(folder, 'demo-being-filled'))).toBe(false)
  })
})

describe('a demo folder', () => {
  it('is not started as a real shop', async () => {
    const demoFolder = mkdtempSync(join(inject('runFolder'), 'demo-'))
    await prepare('shop', demoFolder)
    plainSqlite(`file:${join(demoFolder, 'brasstag.db')}`, (file) => file.exec(`UPDATE "Shop" SET mode = 'demo'`))
    const { ok, said } = await prepare('shop', demoFolder)
    expect(ok).toBe(false)
    expect(said).toBe(
      `${demoFolder} holds the demo: start it with npm start, or name another folder with BRASSTAG_DATA.\n`,
    )
    rmSync(demoFolder, { recursive: true })
  })
})

describe('a demo that was stopped while it was filled for the first time', () => {
  it('begins again, and is whole', { timeout: 600_000 }, async () => {
    const demoFolder = mkdtempSync(join(inject('runFolder'), 'demo-'))
    const url = `file:${join(demoFolder, 'brasstag.db')}`
    const count = (table: string) =>
      plainSqlite(url, (file) => file.prepare(`SELECT count(*) FROM "${table}"`).pluck().get() as number)
    await killWhileFilling(demoFolder, () => count('AuditEntry') > 20)
    expect(existsSync(join(demoFolder, 'demo-being-filled'))).toBe(true)
    plainSqlite(url, (file) => file.exec(`INSERT INTO "Counter" (name, value) VALUES ('of the first try', 1)`))

    const { ok, answer } = await prepare('demo', demoFolder)
    expect(ok).toBe(true)
    const { demo } = JSON.parse(answer) as { demo: { people: object[] } }
    expect(count('Person')).toBe(demo.people.length)
    expect(existsSync(join(demoFolder, 'demo-being-filled'))).toBe(false)
    const strays = plainSqlite(url, (file) =>
      file.prepare(`SELECT count(*) FROM "Counter" WHERE name = 'of the first try'`).pluck().get(),
    )
    expect(strays).toBe(0)
    rmSync(demoFolder, { recursive: true })
  })
})

async function killWhileFilling(data: string, isUnderWay: () => boolean): Promise<void> {
  const args = ['--conditions=react-server', await bundled('lib/cli/prepare.ts'), 'demo']
  const { DATABASE_URL: _url, ...env } = process.env
  const child = spawn(process.execPath, args, {
    cwd: root,
    env: { ...env, BRASSTAG_DATA: data, NEXTAUTH_SECRET: secret },
    stdio: 'ignore',
  })
  const watch = setInterval(() => {
    if (existsSync(join(data, 'demo-being-filled')) && isUnderWay()) child.kill('SIGKILL')
  }, 50)
  return new Promise((resolve, reject) => {
    child.on('close', (_code, signal) => {
      clearInterval(watch)
      if (signal === 'SIGKILL') resolve()
      else reject(new Error('The demo was to be stopped while it was filled.'))
    })
  })
}

describe('a damaged file', () => {
  it('is refused and left as it is', async () => {
    const other = mkdtempSync(join(inject('runFolder'), 'damaged-'))
    const words = 'this is no database at all, however long one looks at it'
    writeFileSync(join(other, 'brasstag.db'), words)
    const { ok, said } = await prepare('shop', other)
    expect(ok).toBe(false)
    expect(said).toMatch(
      /^The database .*brasstag\.db is damaged: it does not begin as a database does\. No backup .*\n$/,
    )
    expect(readFileSync(join(other, 'brasstag.db'), 'utf8')).toBe(words)
    rmSync(other, { recursive: true })
  })
})

describe('a shop of an earlier version', () => {
  it('is backed up before it is brought up to date, and that backup is brought up to date when it is put back', async () => {
    const { url, folder: earlier } = await emptyDatabase('sqlite')
    await applyMigrations(url, '0019_wanted')
    const { ok, said } = await prepare('shop', earlier)
    expect(ok).toBe(true)
    expect(said).toMatch(/^• Making a backup before .*\n• Database brought up to date: 0021_/)
    const [backup] = backupsIn(join(earlier, 'backups'))
    expect(backup?.kind).toBe('before-update')
    expect((await readManifest(backup?.path ?? '')).schema).toMatch(/^0019_/)
    const data = mkdtempSync(join(inject('runFolder'), 'forward-'))
    const { applied } = await restoreBackup({ path: backup?.path ?? '', data, nowMs: Date.now() })
    expect(applied[0]).toMatch(/^0021_/)
  })
})

describe('a shop on PostgreSQL', () => {
  it('starts, of two that start at once one brings it up to date, and is not started as a demo', async () => {
    const { url, folder: files, remove } = await emptyDatabase('postgresql')
    const start = (mode: string) =>
      elsewhereRun('lib/cli/prepare.ts', [mode], { BRASSTAG_DATA: files, DATABASE_URL: url })
    const both = await Promise.all([start('shop'), start('shop')])
    expect(
      both.map(({ ok, said }) => [ok, said.replace(/^• Waiting for another [^\n]*\n|: 0001.*/gs, '')]).sort(),
    ).toEqual([
      [true, ''],
      [true, '• Database brought up to date'],
    ])
    for (const { answer } of both) expect(JSON.parse(answer)).toHaveProperty('ownerCode')
    const asDemo = await start('demo')
    expect(asDemo.ok).toBe(false)
    expect(asDemo.said).toContain('The database of DATABASE_URL holds a real shop: start it with npm run shop')
    expect(existsSync(join(files, 'brasstag.db'))).toBe(false)
    await remove()
  })
})
