import { beforeAll, expect, it, vi } from 'vitest'
import { keyOf } from '@/lib/core/route/keys'
import { recordReadingsSchema } from '@/lib/schemas/visit'
import { seeStep } from '@/lib/use-cases/stations/see-step'
import { recordReadings } from '@/lib/use-cases/visits/record-readings'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { at, machinist, monday, refusalOf } from '../jobs/counter-shop'
import { makeFlatPlan, shopWithJob, workThrough } from '../release/whole-job'

vi.setConfig({ testTimeout: 60_000, hookTimeout: 120_000 })

let database: TestDatabase
let visitId = ''
const mill = keyOf('flat-cut')
const id = (last: number) => `019caed9-4300-7000-8000-0000000000${String(last).padStart(2, '0')}`
const [burette, otherBurette, micrometer, bench, retired] = [1, 2, 3, 4, 5].map(id) as [
  string,
  string,
  string,
  string,
  string,
]

type Typed = readonly [kind: string, point: string, text: string, instrumentId?: string | null]
const record = (typed: readonly Typed[], seen = 99_999, whole: string | null = null) =>
  recordReadings(
    machinist,
    recordReadingsSchema.parse({
      visitId,
      step: mill,
      seen,
      entry: {
        readings: typed.map(([kind, point, text, instrumentId]) => ({
          kind,
          point,
          text,
          notTaken: null,
          ...(instrumentId === undefined ? {} : { instrumentId }),
        })),
        instrumentId: whole,
        conditions: {},
        takenAt: null,
      },
    }),
    at(monday),
  )
const atMill = () => seeStep(machinist, visitId, mill, monday)
const sets = () =>
  database.client.readingSet.findMany({
    where: { visitId, stepId: 'flat-cut' },
    include: { points: true },
    orderBy: { id: 'asc' },
  })

beforeAll(async () => {
  database = await testDatabase()
  const job = await shopWithJob(database, ['flat-cut'])
  visitId = job.heads[0]?.visitId ?? ''
  const kinds = { [burette]: 'burette', [otherBurette]: 'burette', [micrometer]: 'gauge', [bench]: 'flow bench' }
  await database.client.instrument.createMany({
    data: [
      ...Object.entries(kinds).map(([key, kind]) => ({
        id: key,
        name: `${kind} ${key.slice(-1)}`,
        kind,
        createdAt: monday,
      })),
      { id: retired, name: 'old gauge', kind: 'gauge', createdAt: monday, retiredAt: monday },
    ],
  })
  await workThrough(visitId, ['flat-cut'])
  await makeFlatPlan(job)
})

it('each kind of reading offers what measures it, and nothing else', async () => {
  const { instruments } = await atMill()
  expect(instruments.cc?.map(({ id: one }) => one)).toEqual([burette, otherBurette])
  expect(instruments['cut-depth']?.map(({ id: one }) => one)).toEqual([micrometer])
})

it('what is read at one go with two instruments is kept as two sets of one event, each with its own', async () => {
  const { seen } = await atMill()
  const typed: readonly Typed[] = [
    ['cut-depth', '', '0.010', micrometer],
    ['cc', 'at-stop', '62.3', otherBurette],
  ]
  expect((await record(typed, seen)).written).toBe(2)
  const kept = await sets()
  expect(kept.map(({ instrumentId, points }) => [instrumentId, points.map(({ kind }) => kind)])).toEqual([
    [micrometer, ['cut-depth']],
    [otherBurette, ['cc']],
  ])
  expect(new Set(kept.map(({ eventSeq }) => eventSeq)).size).toBe(1)
  // The answer was lost: sent once more by the same page it is entered once.
  expect((await record(typed, seen)).written).toBe(0)
  expect(await sets()).toHaveLength(2)
})

it('the one used last for a kind comes first', async () => {
  expect((await atMill()).instruments.cc?.map(({ id: one }) => one)).toEqual([otherBurette, burette])
})

it('what names none goes by the whole go; one that is out of use is refused with all of it', async () => {
  const before = (await sets()).length
  expect((await refusalOf(record([['cut-depth', '', '0.012', retired]]))).message).toContain('no longer in use')
  expect(await sets()).toHaveLength(before)
  await record([['cut-depth', '', '0.012']], 99_999, micrometer)
  expect((await sets()).at(-1)?.instrumentId).toBe(micrometer)
})
