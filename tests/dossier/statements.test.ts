import { beforeAll, describe, expect, it } from 'vitest'
import { db } from '@/lib/data/db'
import { newId } from '@/lib/data/ids'
import { lastSeq } from '@/lib/dossier/find-step'
import { loadDossier } from '@/lib/dossier/dossier'
import { entrySchema } from '@/lib/schemas/visit'
import { seeHead } from '@/lib/use-cases/heads/see-head'
import { seeJob } from '@/lib/use-cases/jobs/see-job'
import { seeStep } from '@/lib/use-cases/stations/see-step'
import { tickStep } from '@/lib/use-cases/visits/tick-step'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { statementsOf, type Sent } from '@/tests/setup/statements'
import { at, monday, owner } from '../use-cases/jobs/counter-shop'
import { makeFlatPlan, shopWithJob, workThrough } from '../use-cases/release/whole-job'

type Head = Awaited<ReturnType<typeof shopWithJob>>['heads'][number]

let database: TestDatabase
let first: Head
let second: Head
let number: string

beforeAll(async () => {
  database = await testDatabase()
  const job = await shopWithJob(database)
  ;[first, second] = job.heads as [Head, Head]
  number = job.number
  await workThrough(first.visitId, ['flat-cut'])
  await makeFlatPlan(job)
  await workThrough(first.visitId, ['finished'])
}, 240_000)

const key = (stepId: 'finished' | 'flat-cut' | 'chambers') => ({ stepId, occurrence: '', orderId: null })

/** A shop of two thousand heads more, each booked and checked in on a job of its own. */
async function fillTheShop(): Promise<void> {
  const { client } = database
  const mould = await client.visit.findUniqueOrThrow({
    where: { id: second.visitId },
    include: { job: true, head: true },
  })
  const { job, head, ...visit } = mould
  const made = Array.from({ length: 2000 }, (_, place) => ({
    jobId: newId(monday),
    headId: newId(monday),
    pairId: newId(monday),
    visitId: newId(monday),
    number: `25-${String(place).padStart(4, '0')}`,
  }))
  await client.job.createMany({ data: made.map(({ jobId, number }) => ({ ...job, id: jobId, number })) })
  await client.head.createMany({ data: made.map(({ headId }) => ({ ...head, id: headId })) })
  await client.pair.createMany({
    data: made.map(({ pairId, jobId }) => ({ id: pairId, jobId, castingId: head.castingId })),
  })
  await client.visit.createMany({
    data: made.map(({ visitId, jobId, headId, pairId }) => ({ ...visit, id: visitId, jobId, headId, pairId })),
  })
}

const looks = {
  'the finished step, beside its mate': () => seeStep(owner, first.visitId, key('finished'), monday),
  'the mill, with its next pass': () => seeStep(owner, first.visitId, key('flat-cut'), monday),
  'the chambers': () => seeStep(owner, second.visitId, key('chambers'), monday),
  'the page of a head': () => seeHead(owner, first.headId),
  'the page of a job': () => seeJob(owner, { number, now: monday }),
} as const
const most: Readonly<Record<string, number>> = { 'the page of a head': 14, 'the page of a job': 14 }

async function tickOnce(): Promise<readonly Sent[]> {
  const { visit, route } = await loadDossier(await db(), second.visitId)
  const step = route.find(({ state, waitsFor }) => waitsFor.length === 0 && (state === 'ready' || state === 'started'))
  if (!step) throw new Error('There is a step to do.')
  const readings = step.owes.flatMap(({ kind, points }) =>
    points.map((point) => ({
      kind,
      point,
      text: kind === 'photo' ? 'no photo: none was asked for' : '1',
      notTaken: null,
    })),
  )
  const entry = entrySchema.parse({ readings, instrumentId: null, conditions: {}, takenAt: null })
  const { stepId, occurrence, orderId } = step
  const input = { visitId: second.visitId, step: { stepId, occurrence, orderId }, seen: lastSeq(visit, step), entry }
  return statementsOf(() => tickStep(owner, input, at(monday)))
}

describe('how often the database is asked', () => {
  it('stays as low with two thousand heads more, and with more readings', { timeout: 240_000 }, async () => {
    const before = new Map<string, number>()
    for (const [name, look] of Object.entries(looks)) before.set(name, (await statementsOf(look)).length)
    const tick = (await tickOnce()).length
    await fillTheShop()
    for (const [name, look] of Object.entries(looks)) {
      const sent = (await statementsOf(look)).length
      expect({ name, sent }).toEqual({ name, sent: before.get(name) })
      expect(sent).toBeLessThanOrEqual(most[name] ?? 12)
    }
    const later = (await tickOnce()).length
    expect(Math.max(tick, later)).toBeLessThanOrEqual(30)
  })
})
