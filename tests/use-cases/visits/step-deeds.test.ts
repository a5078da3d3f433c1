import { beforeAll, expect, it, vi } from 'vitest'
import { keyOf } from '@/lib/core/route/keys'
import { recordReadingsSchema, startStepSchema } from '@/lib/schemas/visit'
import { seeLeftStep } from '@/lib/use-cases/stations/see-left-step'
import { seeStep } from '@/lib/use-cases/stations/see-step'
import { recordReadings } from '@/lib/use-cases/visits/record-readings'
import { startStep } from '@/lib/use-cases/visits/start-step'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { at, machinist, monday, owner, refusalOf } from '../jobs/counter-shop'
import { shopWithJob } from '../release/whole-job'

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 })

let database: TestDatabase
let visitId = ''
const chambers = keyOf('chambers')
const entry = (texts: Readonly<Record<string, string>>) => ({
  readings: Object.entries(texts).map(([point, text]) => ({ kind: 'cc', point, text, notTaken: null })),
  instrumentId: null,
  conditions: {},
  takenAt: null,
})
const record = (texts: Readonly<Record<string, string>>, seen = 99_999) =>
  recordReadings(
    machinist,
    recordReadingsSchema.parse({ visitId, step: chambers, seen, entry: entry(texts) }),
    at(monday),
  )
const seenOf = async (key: typeof chambers) => (await seeStep(machinist, visitId, key, monday)).seen

beforeAll(async () => {
  database = await testDatabase()
  const job = await shopWithJob(database)
  visitId = job.heads[0]?.visitId ?? ''
})

it('all figures of a try that cannot be read are refused at one go, each under its cell', async () => {
  const refused = await refusalOf(record({ '1': '64..2', '2': '64.0', '3': 'x' }))
  expect(Object.keys(refused.fields ?? {}).sort()).toEqual(['cc|1', 'cc|3'])
  expect(await database.client.readingSet.count({ where: { visitId, stepId: 'chambers' } })).toBe(0)
})

it('a conflict says who did what and when as data, and the deed goes through once that is seen', async () => {
  const seen = await seenOf(chambers)
  await startStep(owner, startStepSchema.parse({ visitId, step: chambers, seen }), at(monday))
  const refused = await refusalOf(record({ '1': '64.2' }, seen))
  expect(refused).toMatchObject({
    code: 'conflict',
    theirs: { who: owner.name, verb: 'start', at: monday.toISOString(), seen: await seenOf(chambers) },
  })
  expect((await record({ '1': '64.2' }, await seenOf(chambers))).written).toBe(1)
})

it('a step that the route does not have is named, and leads to what is open there', async () => {
  const weld = keyOf('weld')
  expect(await refusalOf(seeStep(machinist, visitId, weld, monday))).toMatchObject({ code: 'not-on-route' })
  const left = await seeLeftStep(machinist, visitId, weld, 'measuring-bench')
  expect(left.label).toBe('Weld')
  expect(left.open.length).toBeGreaterThan(0)
  expect(left.open.every(({ station, state }) => station === 'measuring-bench' && state !== 'done')).toBe(true)
})
