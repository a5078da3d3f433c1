import { beforeAll, expect, it, vi } from 'vitest'
import { demoStaff } from '@/lib/demo/shop'
import type { TestDatabase } from '../setup/database'
import { correctReading } from '@/lib/use-cases/visits/correct-reading'
import { demoMoment, filledDemo } from '../setup/demo-shop'

vi.setConfig({ hookTimeout: 300_000 })

let database: TestDatabase

beforeAll(async () => {
  database = await filledDemo()
})

const words = (text: string): string => text.toLowerCase()

it('the trail of a shop holds no name, number or address of a customer', async () => {
  const { client } = database
  const contacts = await client.customerContact.findMany()
  const entries = await client.auditEntry.findMany({ select: { seq: true, action: true, changes: true } })
  expect(contacts.length).toBeGreaterThan(5)
  expect(entries.length).toBeGreaterThan(500)
  const told = contacts
    .flatMap(({ name, phone, phoneDigits, email, address }) => [name, phone, phoneDigits, email, address])
    .filter((text) => text.trim().length > 3)
    .map(words)
  const handedTo = (await client.handOver.findMany({ select: { takenBy: true } })).map(({ takenBy }) => words(takenBy))
  const secret = [...new Set([...told, ...handedTo])]
  expect(secret.length).toBeGreaterThan(10)
  const leaks = entries.flatMap(({ action, changes }) => {
    const found = secret.find((text) => words(changes).includes(text))
    return found === undefined ? [] : [`${action}: ${found}`]
  })
  expect([...new Set(leaks)]).toEqual([])
})

it('nor does the correction of who took a head', async () => {
  const { client } = database
  const kept = await client.reading.findFirstOrThrow({ where: { kind: 'taken-by' }, include: { set: true } })
  await correctReading(
    (await demoStaff()).orla,
    {
      visitId: kept.set.visitId ?? '',
      readingId: kept.id,
      correction: 'replace',
      text: 'Wren Calloway’s brother',
      reason: 'he came for her',
    },
    { now: demoMoment },
  )
  const { changes } = await client.auditEntry.findFirstOrThrow({
    where: { action: 'reading.correct' },
    orderBy: { seq: 'desc' },
  })
  expect(changes).not.toMatch(/calloway/i)
  expect(changes).toContain('he came for her')
})

it('what was done to a head names its job', async () => {
  const { client } = database
  const ofHeads = { visitId: { not: null } }
  expect(await client.auditEntry.count({ where: ofHeads })).toBeGreaterThan(300)
  const without = await client.auditEntry.findMany({ where: { ...ofHeads, jobId: null }, distinct: ['action'] })
  expect(without.map(({ action }) => action)).toEqual([])
})
