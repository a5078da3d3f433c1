import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it, vi } from 'vitest'
import { keyOf } from '@/lib/core/route/keys'
import type { Actor } from '@/lib/core/access/roles'
import { operationsSchema, type OperationKind } from '@/lib/schemas/operation'
import { seeStep } from '@/lib/use-cases/stations/see-step'
import { carryOut } from '@/lib/web/operations'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { machinist, monday, owner } from '../use-cases/jobs/counter-shop'
import { shopWithJob } from '../use-cases/release/whole-job'

vi.mock('next/cache', () => ({ revalidatePath: () => undefined }))
const logged = vi.hoisted(() => [] as unknown[])
vi.mock('@/lib/web/log', () => ({ log: { error: (what: unknown) => logged.push(what) } }))
/** A disk that is full while one hold is written. */
vi.mock('@/lib/use-cases/holds/open-hold', async (original) => {
  const real = await original<typeof import('@/lib/use-cases/holds/open-hold')>()
  const openHold: typeof real.openHold = async (actor, input, moment) => {
    if (input.reason === 'disk full') throw new Error('database or disk is full')
    return real.openHold(actor, input, moment)
  }
  return { openHold }
})

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 })

let database: TestDatabase
let first = ''
let second = ''
const chambers = keyOf('chambers')
const checkIn = keyOf('check-in')
const thickness = keyOf('thickness')

const said = (kind: string, text: string, point = '') => ({ kind, point, text, notTaken: null })
const entryOf = (...readings: ReturnType<typeof said>[]) => ({
  readings,
  instrumentId: null,
  conditions: {},
  takenAt: null,
})
const cc = (texts: Readonly<Record<string, string>>) =>
  entryOf(...Object.entries(texts).map(([point, text]) => said('cc', text, point)))
/** What a tick of the chambers asks for besides. */
const valvesAndPlug = [said('valves-used', 'own'), said('plug-used', 'own')]

type Deed = { id?: string; kind: OperationKind; input: object; takenAt?: Date; version?: number; by?: Actor }

const operation = ({ id = randomUUID(), kind, input, takenAt = monday, version = 1, by = machinist }: Deed) => ({
  id,
  kind,
  version,
  personId: by.personId,
  takenAt: takenAt.toISOString(),
  input,
})
type Kept = ReturnType<typeof operation>

const send = (operations: readonly Kept[], { by = machinist, sentAt = monday, now = monday } = {}) =>
  carryOut(by, operationsSchema.parse({ sentAt: sentAt.toISOString(), operations }), now)

const statesOf = async (answers: ReturnType<typeof send>) => (await answers).map(({ state }) => state)
const seenOf = async (visitId: string, key: typeof chambers) => (await seeStep(owner, visitId, key, monday)).seen
const minutesAfter = (minutes: number) => new Date(monday.getTime() + minutes * 60_000)
const eventsOf = async (visitId: string, stepId: string) =>
  (await database.client.visitEvent.findMany({ where: { visitId, stepId }, orderBy: { seq: 'asc' } })).map(
    ({ kind }) => kind,
  )
const setsOf = (visitId: string, stepId: string) =>
  database.client.readingSet.findMany({
    where: { visitId, stepId },
    orderBy: { eventSeq: 'asc' },
    include: { points: true },
  })

beforeAll(async () => {
  database = await testDatabase()
  const job = await shopWithJob(database)
  first = job.heads[0]?.visitId ?? ''
  second = job.heads[1]?.visitId ?? ''
  const entry = entryOf(said('condition', 'worn'), said('came-with', 'bare'), said('photo', 'no photo: no camera'))
  for (const visitId of [first, second]) {
    const input = { visitId, step: checkIn, seen: 0, entry }
    expect(await statesOf(send([operation({ kind: 'tick', input })]))).toEqual(['done'])
  }
})

describe('what a device kept is carried out', () => {
  it('in order, each deed in the knowledge of those before it, the readings at the time they were taken', async () => {
    const seen = await seenOf(first, chambers)
    const step = { visitId: first, step: chambers, seen }
    const kept = [
      operation({ kind: 'start', input: step, takenAt: minutesAfter(-30) }),
      operation({
        kind: 'record-readings',
        input: { ...step, entry: cc({ '1': '64.0', '2': '63.9' }) },
        takenAt: minutesAfter(-25),
      }),
      operation({
        kind: 'record-readings',
        input: { ...step, entry: cc({ '3': '64.1' }) },
        takenAt: minutesAfter(-20),
      }),
      operation({
        kind: 'tick',
        input: { ...step, entry: entryOf(said('cc', '64.2', '4'), ...valvesAndPlug) },
        takenAt: minutesAfter(-15),
      }),
    ]
    expect(await statesOf(send(kept))).toEqual(['done', 'done', 'done', 'done'])
    expect(await eventsOf(first, 'chambers')).toEqual(['start', 'read', 'read', 'read', 'tick'])
    const sets = await setsOf(first, 'chambers')
    expect(sets.map(({ takenAt }) => takenAt)).toEqual([minutesAfter(-25), minutesAfter(-20), minutesAfter(-15)])
  })

  it('once, however often and however many times at once it is sent; all are answered alike', async () => {
    const seen = await seenOf(second, chambers)
    const step = { visitId: second, step: chambers, seen }
    const kept = [
      operation({ kind: 'record-readings', input: { ...step, entry: cc({ '1': '64.0', '2': '63.9' }) } }),
      operation({
        kind: 'tick',
        input: { ...step, entry: entryOf(said('cc', '64.1', '3'), said('cc', '64.2', '4'), ...valvesAndPlug) },
      }),
    ]
    const answers = await Promise.all(Array.from({ length: 10 }, () => send(kept)))
    for (const each of answers) expect(each).toEqual(answers[0])
    expect(answers[0]?.map(({ state }) => state)).toEqual(['done', 'done'])
    expect(await eventsOf(second, 'chambers')).toEqual(['read', 'read', 'tick'])
    const points = (await setsOf(second, 'chambers')).flatMap((set) => set.points)
    expect(points.map(({ text }) => text).sort()).toEqual(['63.9', '64.0', '64.1', '64.2', 'own', 'own'])
  })

  it('once, though the device has seen more since it was sent the first time', async () => {
    const step = { visitId: second, step: keyOf('seat-before'), seen: await seenOf(second, keyOf('seat-before')) }
    const kept = operation({ kind: 'start', input: step })
    expect(await statesOf(send([kept]))).toEqual(['done'])
    expect(await statesOf(send([{ ...kept, input: { ...step, seen: step.seen + 7 } }]))).toEqual(['done'])
    expect(await eventsOf(second, 'seat-before')).toEqual(['start'])
  })

  it('by a device whose clock is a day ahead or behind: the times are those of the shop', async () => {
    const day = 24 * 60
    const { fields } = await seeStep(machinist, second, thickness, monday)
    const corners = fields.filter(({ kind }) => kind === 'thickness').map(({ point }) => point)
    for (const [place, off] of [day, -day].entries()) {
      const seen = await seenOf(second, thickness)
      const entry = entryOf(said('thickness', '4.480', corners[place]))
      const input = { visitId: second, step: thickness, seen, entry }
      const kept = operation({ kind: 'record-readings', input, takenAt: minutesAfter(off - 10) })
      expect(await statesOf(send([kept], { sentAt: minutesAfter(off) }))).toEqual(['done'])
    }
    const sets = await setsOf(second, 'thickness')
    expect(sets.map(({ takenAt }) => takenAt)).toEqual([minutesAfter(-10), minutesAfter(-10)])
  })

  it('that was seconds under way to a busy server: the time is that of the device still', async () => {
    const { fields } = await seeStep(machinist, second, thickness, monday)
    const corners = fields.filter(({ kind }) => kind === 'thickness').map(({ point }) => point)
    const seen = await seenOf(second, thickness)
    const input = { visitId: second, step: thickness, seen, entry: entryOf(said('thickness', '4.480', corners[2])) }
    const kept = operation({ kind: 'record-readings', input, takenAt: minutesAfter(-5) })
    const nineSecondsLater = new Date(monday.getTime() + 9000)
    expect(await statesOf(send([kept], { now: nineSecondsLater }))).toEqual(['done'])
    expect((await setsOf(second, 'thickness')).at(-1)?.takenAt).toEqual(minutesAfter(-5))
  })
})

describe('what cannot be carried out', () => {
  it('is refused with both sides when somebody else was first; the rest goes on', async () => {
    const pressure = keyOf('seat-before')
    const seen = await seenOf(first, pressure)
    await send([operation({ kind: 'start', by: owner, input: { visitId: first, step: pressure, seen } })], {
      by: owner,
    })
    const answers = await send([
      operation({ kind: 'start', input: { visitId: first, step: pressure, seen } }),
      operation({ kind: 'finding', input: { visitId: first, stepId: 'chambers', what: 'A nick beside chamber 3.' } }),
    ])
    expect(answers).toMatchObject([
      { state: 'refused', refusal: { code: 'conflict', theirs: { who: owner.name, verb: 'start' } } },
      { state: 'done' },
    ])
  })

  it('waits when the fault is not in it, and the later deeds of its head with it, not those of another', async () => {
    const hold = (visitId: string, reason: string) =>
      ({ kind: 'hold', input: { visitId, stepId: null, reason } }) as const
    const finding = (visitId: string) =>
      operation({ kind: 'finding', input: { visitId, stepId: null, what: 'A worn guide.' } })
    const kept = [operation(hold(first, 'disk full')), finding(first), finding(second)]
    expect(await statesOf(send(kept))).toEqual(['again', 'again', 'done'])
    expect(logged.splice(0)).toHaveLength(1)
    expect(await statesOf(send(kept.slice(1)))).toEqual(['done', 'done'])
    expect(await database.client.finding.count({ where: { what: 'A worn guide.' } })).toBe(2)
  })

  it('is not done in another person’s name', async () => {
    const input = { visitId: first, stepId: null, what: 'Seen by somebody else.' }
    const answers = await send([operation({ kind: 'finding', by: owner, input })])
    expect(answers).toMatchObject([{ state: 'again', refusal: { code: 'not-signed-in' } }])
    expect(await database.client.finding.count({ where: { what: 'Seen by somebody else.' } })).toBe(0)
  })

  it('is refused when the same id comes with something else in it, or in a version that is not known', async () => {
    const id = randomUUID()
    const finding = (what: string, version = 1) =>
      operation({ id, version, kind: 'finding', input: { visitId: first, stepId: null, what } })
    expect(await statesOf(send([finding('A crack.')]))).toEqual(['done'])
    expect(await send([finding('No crack.')])).toMatchObject([
      { state: 'refused', refusal: { code: 'operation-reused' } },
    ])
    expect(await send([finding('A crack.', 2)])).toMatchObject([{ state: 'refused', refusal: { code: 'invalid' } }])
    expect(await send([finding('A crack.')])).toMatchObject([{ state: 'done' }])
  })

  it('says which field is wrong', async () => {
    const answers = await send([operation({ kind: 'finding', input: { visitId: first, stepId: null, what: '' } })])
    expect(answers).toMatchObject([{ state: 'refused', refusal: { fields: { what: 'Enter what was found.' } } }])
  })
})

it('what the database cannot take now is sent again under its id, and then done once', async () => {
  const what = operation({ kind: 'finding', input: { visitId: second, stepId: null, what: 'a nick in the deck' } })
  await database.client.$queryRawUnsafe('PRAGMA query_only = 1')
  const [refused] = await send([what])
  await database.client.$queryRawUnsafe('PRAGMA query_only = 0')
  expect(refused).toMatchObject({ state: 'again', refusal: { code: 'unavailable' } })
  expect((await send([what, what])).map(({ state }) => state)).toEqual(['done', 'done'])
  expect(await database.client.finding.count({ where: { what: 'a nick in the deck' } })).toBe(1)
})
