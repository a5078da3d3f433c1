import { beforeEach, expect, it } from 'vitest'
import { correctReferenceSchema } from '@/lib/schemas/flow'
import { correctReference } from '@/lib/use-cases/flow/correct-reference'
import { recordReference } from '@/lib/use-cases/flow/record-reference'
import { seeReferences } from '@/lib/use-cases/flow/see-references'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { at, casting, counter, machinist, monday, openShop, refusalOf } from '../jobs/counter-shop'

let database: TestDatabase
let runId: string
const flow = (point: string, text: string) => ({ kind: 'flow' as const, point, text, notTaken: null })
const seen = () => seeReferences(machinist, casting)
const lineAt = async (point: string) => (await seen()).record[0]?.lines.find((line) => line.point.startsWith(point))

type Wanted = {
  readonly readingId: string | null
  readonly correction: 'replace' | 'withdraw'
  readonly text?: string
}
const correct = ({ text = '', ...wanted }: Wanted, actor = machinist) =>
  correctReference(
    actor,
    correctReferenceSchema.parse({ castingId: casting, runId, text, reason: 'misread', ...wanted }),
    at(monday),
  )

beforeEach(async () => {
  database = await testDatabase()
  await openShop(database)
  const readings = [flow('intake@0.200', '120'), flow('intake@0.400', '200'), flow('exhaust@0.200', '90')]
  const run = await recordReference(
    machinist,
    { castingId: casting, readings, conditions: { testPressureInH2O: '28' } },
    at(monday),
  )
  runId = run.setId
})

it('a lift is corrected, with the old figure and the reason beside it; still one run, under its own name', async () => {
  await correct({ readingId: (await lineAt('intake at 0.200'))?.id ?? null, correction: 'replace', text: '126' })
  const { record, runs } = await seen()
  expect(record).toHaveLength(1)
  expect(record[0]?.lines.map(({ point, text, earlier, reason }) => [point, text, earlier, reason])).toEqual([
    ['intake at 0.200 in', '126 cfm', ['120 cfm'], 'misread'],
    ['intake at 0.400 in', '200 cfm', [], ''],
    ['exhaust at 0.200 in', '90 cfm', [], ''],
  ])
  expect(runs.map(({ id, ports, name }) => [id, ports, name])).toEqual([
    [runId, 'intake, exhaust', 'Halden 4, reference run'],
  ])
})

it('a lift is withdrawn: the port has no run left when it was its only one, the figure stays to be seen', async () => {
  await correct({ readingId: (await lineAt('exhaust'))?.id ?? null, correction: 'withdraw' })
  expect((await seen()).runs[0]?.ports).toBe('intake')
  expect(await lineAt('exhaust')).toMatchObject({ text: 'withdrawn', withdrawn: true, earlier: ['90 cfm'] })
})

it('a whole run is withdrawn, and is held against nothing any more', async () => {
  expect(await correct({ readingId: null, correction: 'withdraw' })).toEqual({ corrected: 3 })
  const { runs, record } = await seen()
  expect(runs).toEqual([])
  expect(record[0]).toMatchObject({ withdrawn: true, runId })
  expect((await refusalOf(correct({ readingId: null, correction: 'withdraw' }))).code).toBe('conflict')
})

it('is refused with a figure that cannot be, to the counter, for a run as a whole replaced, and without a reason', async () => {
  const readingId = (await lineAt('intake at 0.200'))?.id ?? null
  const before = await database.client.reading.count()
  expect((await refusalOf(correct({ readingId, correction: 'replace', text: '9000' }))).code).toBe('out-of-range')
  expect((await refusalOf(correct({ readingId, correction: 'replace' }))).code).toBe('invalid')
  expect((await refusalOf(correct({ readingId, correction: 'withdraw' }, counter))).code).toBe('not-allowed')
  const whole = { castingId: casting, runId, readingId: null, correction: 'replace', text: '1', reason: 'x' }
  expect(correctReferenceSchema.safeParse(whole).success).toBe(false)
  expect(correctReferenceSchema.safeParse({ ...whole, correction: 'withdraw', reason: ' ' }).success).toBe(false)
  expect(await database.client.reading.count()).toBe(before)
})

it('of a casting with hundreds of runs the newest are shown', async () => {
  const run = await database.client.readingSet.findUniqueOrThrow({ where: { id: runId } })
  const runs = Array.from({ length: 450 }, (_, at) => ({
    id: `run-${at}`,
    takenAt: new Date(monday.getTime() + at + 1),
  }))
  const later = runs.map(({ id, takenAt }) => ({ ...run, id, takenAt, recordedAt: takenAt }))
  await database.client.readingSet.createMany({ data: later })
  await database.client.reading.createMany({
    data: runs.map(({ id }) => ({
      ...{ id: `reading-${id}`, setId: id, kind: 'flow', point: 'intake@0.200', value: 120, unit: 'cfm' },
      text: '120',
      reason: '',
    })),
  })
  const { record, runs: held } = await seen()
  expect([record[0]?.runId, record.at(-1)?.runId, record.length]).toEqual(['run-50', 'run-449', 400])
  expect(held).toHaveLength(400)
})
