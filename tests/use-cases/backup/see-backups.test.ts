import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeEach, describe, expect, inject, it } from 'vitest'
import { backupName } from '@/lib/data/backup/names'
import { changeBackupState } from '@/lib/data/backup/state'
import { auditChanges } from '@/lib/data/stored/records'
import { backUpAtNight, startBackup } from '@/lib/use-cases/backup/start-backup'
import { backupHealth, seeBackupLine, seeBackups } from '@/lib/use-cases/backup/see-backups'
import { exportCustomers } from '@/lib/use-cases/customers/export-customers'
import { exportBooks } from '@/lib/use-cases/money/export-books'
import { backupWords } from '@/lib/words/backup'
import { testDatabase, type TestDatabase } from '../../setup/database'
import { book, counter, monday, openShop, owner, refusalOf } from '../jobs/counter-shop'

const hourMs = 60 * 60 * 1000
const hoursLater = (hours: number): Date => new Date(monday.getTime() + hours * hourMs)

let database: TestDatabase
let folder: string
beforeEach(async () => {
  database = await testDatabase()
  await openShop(database)
  folder = join(database.folder, 'backups')
})

/** A backup of that hour; nobody opens it here. */
function backupAt(hours: number, checked = true): void {
  const at = hoursLater(hours).getTime()
  mkdirSync(folder, { recursive: true })
  writeFileSync(join(folder, backupName(at, 'nightly')), Buffer.alloc(1_234_567))
  if (checked) changeBackupState(folder, { checkedMs: { [backupName(at, 'nightly')]: at + 1000 } })
}

describe('what the owner is told of the backups', () => {
  it('none, then good for two days, then red', async () => {
    expect(await seeBackupLine(owner, monday)).toMatchObject({ age: 'none', hours: null })
    backupAt(0)
    const line = await seeBackupLine(owner, hoursLater(5))
    expect(line).toMatchObject({ age: 'good', hours: 5, isChecked: true, fault: '' })
    expect(backupWords(line)).toBe('The newest backup is 5 hours old. It was opened again and found whole.')
    expect((await seeBackupLine(owner, hoursLater(48))).age).toBe('good')
    const old = await seeBackupLine(owner, hoursLater(49))
    expect(old).toMatchObject({ age: 'old', hours: 49 })
    expect(backupWords(old)).toBe('The newest backup is 2 days old. No backup was made last night: make one now.')
    const seen = await seeBackups(owner, hoursLater(5))
    expect(seen.backups).toEqual([
      {
        ...{ name: backupName(monday.getTime(), 'nightly'), kind: 'nightly', at: monday, size: '1.2 MB' },
        checkedAt: new Date(monday.getTime() + 1000),
      },
    ])
  })

  it('why the last one failed, and what became of the second folder', async () => {
    backupAt(0, false)
    const fault = 'No backup was made: there is no room left on the disk.'
    const lastTry = { kind: 'nightly', atMs: monday.getTime(), fault, secondFault: '', leftOut: 2 } as const
    changeBackupState(folder, { lastTry })
    process.env.BRASSTAG_BACKUP_TO = join(database.folder, 'stick')
    const seen = await seeBackups(owner, hoursLater(1))
    expect(seen).toMatchObject({ leftOut: 2, line: { fault, isChecked: false }, second: { isThere: false } })
    expect(backupHealth(owner, monday)).toMatchObject({ state: 'good', fault, secondFolder: 'missing' })
    process.env.BRASSTAG_BACKUP_TO = mkdtempSync(join(inject('runFolder'), 'stick-'))
    expect((await seeBackups(owner, monday)).second).toMatchObject({
      isThere: true,
      isOnSameDisk: true,
      newestMs: null,
    })
    delete process.env.BRASSTAG_BACKUP_TO
  })

  it('nobody else is told, or makes one', async () => {
    expect(await refusalOf(seeBackups(counter, monday))).toMatchObject({ code: 'not-allowed' })
    expect(await refusalOf(startBackup(counter, {}, { now: monday }))).toMatchObject({ code: 'not-allowed' })
    expect(() => backupHealth(counter, monday)).toThrow()
  })
})

describe('the nightly backup', () => {
  const asked = async (now: Date): Promise<string[]> => {
    const kinds: string[] = []
    await backUpAtNight(now, (kind) => void kinds.push(kind))
    return kinds
  }

  it('is begun by one of the processes that find it due at the same moment', async () => {
    expect((await Promise.all([asked(monday), asked(monday), asked(monday)])).flat()).toEqual(['nightly'])
  })

  it('is begun once a night by the shop’s own clock, and an hour after one that failed', async () => {
    expect(await asked(monday)).toEqual(['nightly']) // there is none yet
    backupAt(0)
    expect(await asked(hoursLater(1))).toEqual([])
    // 8:00 in Chicago and 17.5 hours: 1:30 at night there; 18.5 hours: 2:30.
    expect(await asked(hoursLater(17.5))).toEqual([])
    expect(await asked(hoursLater(18.5))).toEqual(['nightly'])
    const atMs = hoursLater(18.5).getTime()
    changeBackupState(folder, {
      lastTry: { kind: 'nightly', atMs, fault: 'No backup was made: …', secondFault: '', leftOut: 0 },
    })
    expect(await asked(hoursLater(19))).toEqual([])
    expect(await asked(hoursLater(19.6))).toEqual(['nightly'])
    changeBackupState(folder, { running: { pid: process.pid, sinceMs: atMs, doing: 'packing' } })
    expect(await asked(hoursLater(20.6))).toEqual([])
    expect(await refusalOf(startBackup(owner, {}, { now: monday }))).toMatchObject({ code: 'wrong-state' })
  })

  it('is not made of a demo', async () => {
    await database.client.shop.update({ where: { id: 1 }, data: { mode: 'demo' } })
    expect(await asked(monday)).toEqual([])
    expect((await seeBackupLine(owner, monday)).age).toBe('demo')
  })
})

it('who took the customers or the books along is on record', async () => {
  await book()
  await exportCustomers(owner, { now: monday })
  await exportBooks(owner, { kind: 'tax', from: '2026-03-01', to: '2026-03-31' }, { now: monday })
  const entries = await database.client.auditEntry.findMany({ where: { subject: 'export' }, orderBy: { seq: 'asc' } })
  expect(
    entries.map(({ action, actorId, changes }) => ({ action, actorId, changes: auditChanges.read(changes, 0) })),
  ).toEqual([
    { action: 'export.customers', actorId: owner.personId, changes: { count: 1 } },
    {
      ...{ action: 'export.books', actorId: owner.personId },
      changes: { kind: 'tax', from: '2026-03-01', to: '2026-03-31' },
    },
  ])
})
