import { mkdtempSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, inject, it, vi } from 'vitest'
import { makeBackup } from '@/lib/cli/backup/make-backup'
import { databaseFingerprints } from '@/lib/cli/backup/move-database'
import { restoreBackup } from '@/lib/cli/backup/restore-backup'
import type { Actor } from '@/lib/core/access/roles'
import { closeClient } from '@/lib/data/client'
import { readFile } from '@/lib/data/files'
import { passwordFits } from '@/lib/data/passwords'
import { personBySignIn } from '@/lib/data/people'
import { actorOfSession, openSession } from '@/lib/data/sessions'
import { demoPassword } from '@/lib/demo/people'
import { bookJobSchema, emptyBooking, emptyHead } from '@/lib/schemas/job'
import { bookJob } from '@/lib/use-cases/jobs/book-job'
import { printSpecSheet } from '@/lib/use-cases/papers/print-spec-sheet'
import { seePicture } from '@/lib/use-cases/photos/see-photos'
import { demoMoment, filledDemo } from '../../setup/demo-shop'
import { plainSqlite } from '../../setup/plain-sqlite'
import { workIn } from '../../setup/restored-shop'

vi.setConfig({ testTimeout: 300_000 })

const secret = 'the secret of the shop that is to be restored'
const backupOf = (url: string, data: string, nowMs: number) => makeBackup({ url, data, kind: 'nightly', nowMs })
const elsewhere = () => mkdtempSync(join(inject('runFolder'), 'restored-'))

async function signIn(name: string): Promise<Actor> {
  const person = await personBySignIn(name)
  expect(await passwordFits(person?.passwordHash ?? null, demoPassword)).toBe(true)
  const actor = await actorOfSession(await openSession(person?.id ?? '', demoMoment), demoMoment)
  if (!actor) throw new Error('Nobody was signed in.')
  return actor
}

it('the drill: backed up at work, restored elsewhere, and worked in', async () => {
  const { url, folder, client } = await filledDemo()
  writeFileSync(join(folder, 'session-secret'), secret, { mode: 0o644 })
  const ids = { photo: await client.photo.findFirstOrThrow(), release: await client.release.findFirstOrThrow() }

  // At work: somebody writes all the time, and is told each time that it is written.
  const acknowledged: string[] = []
  let isOver = false
  const write = async (): Promise<void> => {
    while (!isOver) {
      const name = `at work ${acknowledged.length}`
      await client.counter.create({ data: { name, value: acknowledged.length } })
      acknowledged.push(name)
      await new Promise((resolve) => setTimeout(resolve, 1))
    }
  }
  const working = write()
  while (acknowledged.length < 20) await new Promise((resolve) => setTimeout(resolve, 1))
  const before = [...acknowledged]
  const atWork = await backupOf(url, folder, demoMoment.getTime())
  isOver = true
  await working
  expect(acknowledged.length).toBeGreaterThan(before.length) // nobody had to wait for the end of it
  const restoredAtWork = elsewhere()
  await restoreBackup({ path: atWork.path, data: restoredAtWork, nowMs: demoMoment.getTime() })
  const there = plainSqlite(`file:${restoredAtWork}/brasstag.db`, (file) =>
    file.prepare(`SELECT name FROM "Counter" WHERE name LIKE 'at work %' ORDER BY value`).pluck().all(),
  )
  expect(there.slice(0, before.length)).toEqual(before) // all that was acknowledged before, without a gap after it
  expect(there).toEqual(acknowledged.slice(0, there.length))

  // At rest: the same hash over every row of every table, and every file.
  const atRest = await backupOf(url, folder, demoMoment.getTime() + 60_000)
  expect(atRest).toMatchObject({ leftOut: [], secondFault: '' })
  const prints = await databaseFingerprints(url)
  expect(prints.AuditEntry?.rows).toBeGreaterThan(100)
  await closeClient(url)
  const restored = elsewhere()
  const { aside, applied } = await restoreBackup({ path: atRest.path, data: restored, nowMs: demoMoment.getTime() })
  expect({ aside, applied }).toEqual({ aside: null, applied: [] })
  expect(await databaseFingerprints(`file:${restored}/brasstag.db`)).toEqual(prints)
  expect(readFileSync(join(restored, 'session-secret'), 'utf8')).toBe(secret)
  expect(statSync(join(restored, 'session-secret')).mode & 0o777).toBe(0o600)

  // Somebody signs in, opens a spec sheet and a photo, and books a job.
  await workIn(restored)
  const owner = await signIn('orla')
  const sheet = await printSpecSheet(owner, ids.release.visitId, ids.release.revision)
  expect(Buffer.from(sheet.bytes.subarray(0, 5)).toString()).toBe('%PDF-')
  expect(sheet.bytes).toEqual(await readFile(ids.release.pdfSha256))
  const picture = await seePicture(owner, ids.photo.id, 'full')
  expect(picture).toEqual(
    new Uint8Array(readFileSync(join(folder, 'files', ids.photo.sha256.slice(0, 2), ids.photo.sha256))),
  )
  const booking = bookJobSchema.parse({
    ...emptyBooking(),
    customer: { id: '', name: 'Wilmot Tarn', phone: '', email: '', address: '' },
    heads: [{ ...emptyHead(), stamp: 'WT 1', presentCc: '64' }],
    targetCc: '60',
    promiseOn: '2026-03-27',
  })
  const booked = await bookJob(await signIn('tamsin'), booking, { now: demoMoment })
  expect(booked.heads).toHaveLength(1)
})
