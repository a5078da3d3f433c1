import { beforeAll, describe, expect, it, vi } from 'vitest'
import { keyOf } from '@/lib/core/route/keys'
import {
  correctReadingSchema,
  recordReadingsSchema,
  setRackPlaceSchema,
  startStepSchema,
  tickStepSchema,
} from '@/lib/schemas/visit'
import { seeLeftStep } from '@/lib/use-cases/stations/see-left-step'
import { seeStep } from '@/lib/use-cases/stations/see-step'
import { correctReading } from '@/lib/use-cases/visits/correct-reading'
import { recordReadings } from '@/lib/use-cases/visits/record-readings'
import { returnAsIs } from '@/lib/use-cases/visits/return-as-is'
import { setRackPlace } from '@/lib/use-cases/visits/set-rack-place'
import { startStep } from '@/lib/use-cases/visits/start-step'
import { tickStep } from '@/lib/use-cases/visits/tick-step'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { at, counter, machinist, monday, owner, refusalOf } from '../jobs/counter-shop'
import { shopWithJob } from '../release/whole-job'

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 })

let database: TestDatabase
let visitId = ''
const chambers = keyOf('chambers')
const entry = (texts: Readonly<Record<string, string>>) => ({
  readings: Object.entries(texts).map(([point, text]) => ({
    kind: 'cc',
    point,
    text,
    notTaken: null,
    repeat: 'again',
  })),
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

/** The same person records, the answer is lost, and then ticks with what stands in the cells; or somebody else did. */
describe('readings that are sent again because their answer was lost', () => {
  const cells = { '1': '64.0', '2': '63.8', '3': '64.2', '4': '64.0' }
  const ofRun = (texts: Readonly<Record<string, string>>, run: string) => ({ ...entry(texts), conditions: { run } })
  const tick = (step: typeof chambers, seen: number, sent: object) =>
    tickStep(machinist, tickStepSchema.parse({ visitId, step, seen, entry: sent }), at(monday))
  const textsOf = async (stepId: string) => {
    const rows = await database.client.reading.findMany({ where: { set: { visitId, stepId } }, orderBy: { id: 'asc' } })
    return rows.map(({ kind, point, text }) => `${kind} ${point}: ${text}`)
  }

  it('are entered once, beside those that are new, and the step is ticked', async () => {
    const checkIn = keyOf('check-in')
    const said = (kind: string, text: string) => ({ kind, point: '', text, notTaken: null })
    const some = [said('condition', 'worn'), said('came-with', 'bare')]
    const of = (readings: readonly object[]) => ({ visitId, step: checkIn, entry: { ...entry({}), readings } })
    const seen = await seenOf(checkIn)
    await recordReadings(machinist, recordReadingsSchema.parse({ ...of(some), seen }), at(monday))
    await tick(checkIn, seen, of([...some, said('photo', 'no photo: no camera')]).entry)
    expect(await textsOf('check-in')).toEqual(['condition : worn', 'came-with : bare', 'photo : no photo: no camera'])
    const events = await database.client.visitEvent.findMany({ where: { visitId, stepId: 'check-in' } })
    expect(events.map(({ kind }) => kind)).toEqual(['read', 'read', 'tick'])
  })

  it('are a reading more once the page shows the first', async () => {
    const before = await textsOf('chambers')
    await record({ '1': '64.0' }, await seenOf(chambers))
    await record({ '1': '64.0' }, await seenOf(chambers))
    expect((await textsOf('chambers')).slice(before.length)).toEqual(['cc 1: 64.0', 'cc 1: 64.0'])
  })

  it('are a conflict when a cell was changed meanwhile: it says that it was the person themself', async () => {
    const seen = await seenOf(chambers)
    await record({ '1': '64.0', '2': '63.8' }, seen)
    const refused = await refusalOf(tick(chambers, seen, entry({ ...cells, '2': '63.6' })))
    expect(refused).toMatchObject({ code: 'conflict', theirs: { who: machinist.name, verb: 'read' } })
  })

  it('are entered once where one’s own are kept after that conflict, beside the cell that was changed', async () => {
    const seen = await seenOf(chambers)
    await record({ '1': '64.0', '2': '63.8' }, seen)
    const before = await textsOf('chambers')
    const { theirs } = await refusalOf(record({ '1': '64.0', '2': '63.6' }, seen))
    expect(theirs).toMatchObject({ since: seen, seen: await seenOf(chambers) })
    const kept = { visitId, step: chambers, seen: theirs?.seen, since: theirs?.since }
    const sent = recordReadingsSchema.parse({ ...kept, entry: entry({ '1': '64.0', '2': '63.6' }) })
    expect((await recordReadings(machinist, sent, at(monday))).written).toBe(1)
    expect((await textsOf('chambers')).slice(before.length)).toEqual(['cc 2: 63.6'])
  })

  it('are another entry when they are of another run', async () => {
    const seen = await seenOf(chambers)
    await record(cells, seen)
    expect((await refusalOf(tick(chambers, seen, ofRun(cells, '2')))).code).toBe('conflict')
  })

  it('are a conflict when somebody else read the very same', async () => {
    const seen = await seenOf(chambers)
    const theirs = { visitId, step: chambers, seen, entry: entry(cells) }
    await recordReadings(owner, recordReadingsSchema.parse(theirs), at(monday))
    expect(await refusalOf(tick(chambers, seen, entry(cells)))).toMatchObject({
      code: 'conflict',
      theirs: { who: owner.name },
    })
  })
})

it('what one began oneself is no conflict, what somebody else began is', async () => {
  const seatBefore = keyOf('seat-before')
  const seen = await seenOf(seatBefore)
  const start = { visitId, step: seatBefore, seen }
  const read = (actor: typeof machinist) => {
    const depth = { kind: 'seat-depth', point: '1-intake', text: '.163', notTaken: null }
    const sent = { ...start, entry: { ...entry({}), readings: [depth] } }
    return recordReadings(actor, recordReadingsSchema.parse(sent), at(monday))
  }
  await startStep(machinist, startStepSchema.parse(start), at(monday))
  expect((await refusalOf(read(owner))).code).toBe('conflict')
  expect((await read(machinist)).written).toBe(1)
})

it('a step that the route does not have is named, and leads to what is open there', async () => {
  const weld = keyOf('weld')
  expect(await refusalOf(seeStep(machinist, visitId, weld, monday))).toMatchObject({ code: 'not-on-route' })
  const left = await seeLeftStep(machinist, visitId, weld, 'measuring-bench')
  expect(left.label).toBe('Weld')
  expect(left.open.length).toBeGreaterThan(0)
  expect(left.open.every(({ station, state }) => station === 'measuring-bench' && state !== 'done')).toBe(true)
})

it('a reading of a ticked step is corrected by whoever measures, from the step itself', async () => {
  const screenOf = (actor: typeof machinist) => seeStep(actor, visitId, chambers, monday)
  const chamber2 = async () =>
    (await screenOf(machinist)).fields.find(({ kind, point }) => kind === 'cc' && point === '2')
  const field = await chamber2()
  const before = field?.repeats?.values.map(({ text }) => text) ?? []
  expect(before.length).toBeGreaterThan(1)
  expect((await screenOf(counter)).fields.every(({ readingId }) => readingId === undefined)).toBe(true)
  const typed = { visitId, readingId: field?.readingId, correction: 'replace', text: '63.2', reason: 'misread' }
  await correctReading(machinist, correctReadingSchema.parse(typed), at(monday))
  const after = await chamber2()
  // The last of the repeats is another figure now, and so is their mean.
  expect(after?.repeats?.values.map(({ text }) => text)).toEqual([...before.slice(0, -1), '63.2'])
  expect(after?.readingId).not.toBe(field?.readingId)
  const meanOf = (texts: readonly string[]) => texts.reduce((sum, text) => sum + parseFloat(text), 0) / texts.length
  expect(Number(after?.answer)).toBeCloseTo(meanOf([...before.slice(0, -1), '63.2']), 1)
  // The one that was corrected does not stand any more.
  expect((await refusalOf(correctReading(machinist, correctReadingSchema.parse(typed), at(monday)))).code).toBe(
    'conflict',
  )
})

it('whoever carries a head says where it lies; a move in between is told, and one that left lies nowhere', async () => {
  const put = (rackPlace: string, was: string, actor = machinist) =>
    setRackPlace(actor, setRackPlaceSchema.parse({ visitId, rackPlace, was }), at(monday))
  const { rackPlace } = await seeStep(machinist, visitId, chambers, monday)
  await put('B-3', rackPlace)
  expect((await seeStep(machinist, visitId, chambers, monday)).rackPlace).toBe('B-3')
  const moved = await refusalOf(put('C-1', rackPlace, counter))
  expect([moved.code, moved.fields.rackPlace]).toEqual(['conflict', expect.stringContaining('B-3')])
  // The same place twice is no conflict: two people carried it there.
  await put('B-3', rackPlace, counter)
  const trail = await database.client.auditEntry.findMany({ where: { action: 'visit.rack', visitId } })
  expect(trail.map(({ actorId }) => actorId)).toEqual([machinist.personId])
  await returnAsIs(counter, { visitId, reason: 'not worth it' }, at(monday))
  expect((await refusalOf(put('C-1', 'B-3'))).code).toBe('wrong-state')
})
