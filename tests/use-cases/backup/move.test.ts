import { mkdtempSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, inject, it, vi } from 'vitest'
import { makeBackup } from '@/lib/cli/backup/make-backup'
import { databaseFingerprints, moveRows, refuseFilled } from '@/lib/cli/backup/move-database'
import { restoreBackup } from '@/lib/cli/backup/restore-backup'
import { differing, type Fingerprints } from '@/lib/cli/backup/rows'
import { closeClient, openClient } from '@/lib/data/client'
import { freshDatabase } from '../../setup/database'
import { demoMoment, filledDemo } from '../../setup/demo-shop'
import { inLongRun } from '../../setup/long-run'
import { plainSqlite } from '../../setup/plain-sqlite'
import { withPostgres } from '../../setup/postgres'

// The demo is filled, and a PostgreSQL started.
vi.setConfig({ testTimeout: 300_000, hookTimeout: 300_000 })

const nowMs = demoMoment.getTime()
let demo: { url: string; folder: string }
let prints: Fingerprints
let postgres: string

beforeAll(async () => {
  const { url, folder } = await filledDemo()
  await closeClient(url)
  demo = { url, folder }
  prints = await databaseFingerprints(url)
  postgres = (await freshDatabase('postgresql')).url
  await refuseFilled(postgres)
  await moveRows(url, postgres)
})

describe('moved to PostgreSQL', () => {
  it('every table is the same, row for row; one figure, moment or row that differs is seen', async () => {
    const change = (sql: string) => withPostgres(postgres, async (client) => void (await client.query(sql)))
    await change(`UPDATE "Instrument" SET "version" = "version" + 1 WHERE "id" = (SELECT min("id") FROM "Instrument")`)
    await change(`UPDATE "Person" SET "createdAt" = "createdAt" + interval '1 millisecond' WHERE "signIn" = 'orla'`)
    await change(`INSERT INTO "Counter" (name, value) VALUES ('one more', 1)`)
    expect(differing(prints, await databaseFingerprints(postgres))).toEqual(['Counter', 'Instrument', 'Person'])
    await change(`UPDATE "Instrument" SET "version" = "version" - 1 WHERE "id" = (SELECT min("id") FROM "Instrument")`)
    await change(`UPDATE "Person" SET "createdAt" = "createdAt" - interval '1 millisecond' WHERE "signIn" = 'orla'`)
    await change(`DELETE FROM "Counter" WHERE name = 'one more'`)
    expect(differing(prints, await databaseFingerprints(postgres))).toEqual([]) // as it was moved
    expect(Object.values(prints).reduce((sum, { rows }) => sum + rows, 0)).toBeGreaterThan(4000)
  })

  it('the history is still only added to, numbers go on, and foreign keys hold at once', async () => {
    await withPostgres(postgres, async (client) => {
      await expect(client.query(`DELETE FROM "AuditEntry"`)).rejects.toThrow('append-only')
      const { rows } = await client.query<{ next: string; most: number }>(
        `SELECT nextval(pg_get_serial_sequence('"AuditEntry"', 'seq')) AS next,
          (SELECT max("seq") FROM "AuditEntry") AS most`,
      )
      expect(Number(rows[0]?.next)).toBe((rows[0]?.most ?? 0) + 1)
      await expect(
        client.query(`INSERT INTO "CustomerText" ("customerId", "text") VALUES ('nobody', '')`),
      ).rejects.toThrow('foreign key')
      const late = await client.query(`SELECT conname FROM pg_constraint WHERE contype = 'f' AND condeferrable`)
      expect(late.rows).toEqual([])
    })
  })
})

describe('backed up from PostgreSQL', () => {
  it('is put back as a file, with the same rows; what is searched is found, and no row can be taken away', async () => {
    const { path, rows } = await makeBackup({ url: postgres, data: demo.folder, kind: 'nightly', nowMs })
    expect(rows).toBe(Object.values(prints).reduce((sum, print) => sum + print.rows, 0))
    const data = mkdtempSync(join(inject('runFolder'), 'from-postgres-'))
    await restoreBackup({ path, data, nowMs })
    const url = `file:${data}/brasstag.db`
    expect(differing(prints, await databaseFingerprints(url))).toEqual([])
    plainSqlite(url, (file) => {
      const [row] = file.prepare(`SELECT "text" FROM "CustomerText" LIMIT 1`).all() as { text: string }[]
      const word = row?.text.trim().slice(0, 5) ?? ''
      const found = file.prepare(`SELECT count(*) FROM "CustomerText_find" WHERE "CustomerText_find" MATCH ?`).pluck()
      expect(found.get(`"${word}"`)).toBeGreaterThan(0)
      expect(() => file.exec(`DELETE FROM "AuditEntry"`)).toThrow('append-only')
    })
    // Moments stand as the client writes them, by which they are compared as text.
    const client = await openClient(url)
    const first = await client.auditEntry.findFirstOrThrow({ orderBy: { at: 'asc' } })
    expect(await client.auditEntry.count({ where: { at: first.at } })).toBeGreaterThan(0)
    expect(await client.auditEntry.count({ where: { at: { lt: first.at } } })).toBe(0)
    await closeClient(url)
  })

  it(`is not put back over one in which somebody works${inLongRun ? ', but into an empty one' : ''}`, async () => {
    const path = join(demo.folder, 'backups', 'brasstag-20260308-193000-nightly.tar.gz')
    const data = mkdtempSync(join(inject('runFolder'), 'to-postgres-'))
    await expect(restoreBackup({ path, data, nowMs, postgres })).rejects.toThrow('is not empty')
    if (inLongRun) await intoEmptyOne(path, data)
  })
})

/** Half a minute on a busy machine, so it is of the long run alone. */
async function intoEmptyOne(path: string, data: string): Promise<void> {
  const empty = await freshDatabase('postgresql')
  const stop = (sql: string) => withPostgres(empty.url, async (client) => void (await client.query(sql)))
  await stop(`ALTER TABLE "Visit" ADD CONSTRAINT "none" CHECK (false)`)
  await expect(moveRows(demo.url, empty.url)).rejects.toThrow()
  expect(Object.values(await databaseFingerprints(empty.url)).every(({ rows }) => rows === 0)).toBe(true)
  await stop(`ALTER TABLE "Visit" DROP CONSTRAINT "none"`)
  await restoreBackup({ path, data, nowMs, postgres: empty.url })
  expect(differing(prints, await databaseFingerprints(empty.url))).toEqual([])
  await empty.remove()
}
