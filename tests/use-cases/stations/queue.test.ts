import { beforeEach, expect, it, vi } from 'vitest'
import { keyOf, type StepRef } from '@/lib/core/route/keys'
import type { Station } from '@/lib/core/route/step-ids'
import { decideHoldSchema, openHoldSchema, partsWaitSchema, reportFindingSchema } from '@/lib/schemas/visit'
import { reportFinding } from '@/lib/use-cases/findings/report-finding'
import { decideHold } from '@/lib/use-cases/holds/decide-hold'
import { openHold } from '@/lib/use-cases/holds/open-hold'
import { seeOpenStep } from '@/lib/use-cases/stations/see-open-step'
import { seeQueue } from '@/lib/use-cases/stations/see-queue'
import { seeStep } from '@/lib/use-cases/stations/see-step'
import { seeStations } from '@/lib/use-cases/stations/see-stations'
import { startStep } from '@/lib/use-cases/visits/start-step'
import { openWait } from '@/lib/use-cases/waits/open-wait'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { selectsOf } from '@/tests/setup/statements'
import { at, book, head, machinist, monday, openShop, owner } from '../jobs/counter-shop'
import { workThrough } from '../release/whole-job'

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 })

let database: TestDatabase

beforeEach(async () => {
  database = await testDatabase()
  await openShop(database)
})

const minutes = (count: number): Date => new Date(monday.getTime() + count * 60_000)

/** The lines of one head at a station: which list it is in, and what it says. */
async function linesAt(station: Station, visitId: string, now = monday) {
  const queue = await seeQueue(machinist, station, 1, now)
  return (['ready', 'started', 'today', 'later'] as const).flatMap((list) =>
    queue[list].filter((line) => line.visitId === visitId).map((line) => ({ list, ...line })),
  )
}

async function oneHead(over: Parameters<typeof head>[0] = {}, urgent = false) {
  const job = await book({ heads: [head(over)], ordered: [{ work: 'seat-work', note: '' }], urgent })
  return { visitId: job.heads[0]?.visitId ?? '', headId: job.heads[0]?.headId ?? '' }
}

const hold = (visitId: string, stepId: 'crack' | null, reason: string, now = monday) =>
  openHold(machinist, openHoldSchema.parse({ visitId, stepId, reason }), at(now))

async function decide(visitId: string, note: string, now: Date) {
  const open = await database.client.hold.findFirstOrThrow({ where: { visitId, decidedAt: null } })
  const { id: holdId, version } = open
  await decideHold(
    owner,
    decideHoldSchema.parse({ holdId, version, decision: 'rework', note, customerYes: '' }),
    at(now),
  )
}

it('a line says where the head lies, when it is promised, and what is odd about it', async () => {
  const plain = await oneHead()
  expect(await linesAt('front-desk', plain.visitId)).toMatchObject([
    { list: 'ready', place: '', promised: { on: '2026-03-20', said: 'Fri, Mar 20' }, marks: [] },
  ])

  const first = await oneHead({ rackPlace: 'Rack 3 upper' }, true)
  await reportFinding(
    machinist,
    reportFindingSchema.parse({ visitId: first.visitId, stepId: null, what: 'guide 2 is loose' }),
    at(monday),
  )
  await hold(first.visitId, null, 'bent stud')
  await hold(first.visitId, null, 'and a cracked boss', minutes(1))
  const marks = [
    { code: 'urgent' },
    { code: 'held', reason: 'bent stud' },
    { code: 'finding', what: 'guide 2 is loose' },
  ]
  expect(await linesAt('front-desk', first.visitId)).toMatchObject([{ list: 'later', place: 'Rack 3 upper', marks }])
  // The step itself says each hold, in the same order.
  const { marks: atStep } = await seeStep(machinist, first.visitId, keyOf('check-in'), monday)
  expect(atStep).toEqual([...marks.slice(0, 2), { code: 'held', reason: 'and a cracked boss' }, marks[2]])

  await database.client.visitPlace.update({
    where: { visitId: plain.visitId },
    data: { whereabouts: 'handed over' },
  })
  const back = await oneHead({ headId: plain.headId, comeback: true, comebackCause: 'a seat leaks' })
  expect((await seeStep(machinist, back.visitId, keyOf('check-in'), monday)).marks).toEqual([
    { code: 'comeback', cause: 'a seat leaks', pays: '' },
  ])
  expect(await linesAt('front-desk', back.visitId)).toMatchObject([
    { list: 'ready', marks: [{ code: 'comeback', cause: 'a seat leaks', pays: '' }] },
  ])
})

it('the owner’s rework is on every line until the step that found it is done after the decision', async () => {
  const { visitId } = await oneHead({ used: true })
  const rework = (text: string) => ({ code: 'rework', rework: { from: 'owner', text } })
  await hold(visitId, 'crack', 'crack at chamber 2', minutes(-10))
  await decide(visitId, 'weld it', minutes(-5))
  await workThrough(visitId, ['crack'])
  const atWash = async () => (await linesAt('wash', visitId)).map(({ marks }) => marks)
  expect(await atWash()).toEqual([[rework('weld it')]])
  // Begun is not done.
  await startStep(machinist, { visitId, step: keyOf('crack'), seen: 99_999 }, at(monday))
  expect(await atWash()).toEqual([[rework('weld it')]])
  // Both holds below are decided after the minute in which the steps are ticked.
  await hold(visitId, 'crack', 'crack at chamber 3', minutes(5))
  await decide(visitId, 'weld that too', minutes(6))
  await hold(visitId, null, 'rough boss', minutes(7))
  await decide(visitId, 'polish the boss', minutes(8))
  await workThrough(visitId, ['seat-work'])
  const both = [rework('weld that too'), rework('polish the boss')]
  expect((await linesAt('seat-machine', visitId)).map(({ marks }) => marks)).toEqual([both])
  expect((await seeStep(machinist, visitId, keyOf('seat-work'), monday)).marks).toEqual(both)
})

it('a step comes today when those before it are started or its parts are promised for today', async () => {
  const { visitId } = await oneHead()
  const listAt = async (station: Station, now = monday) =>
    (await linesAt(station, visitId, now)).map(({ list }) => list)
  const start = async (ref: StepRef) => {
    const step = keyOf(ref)
    await startStep(machinist, { visitId, step, seen: 99_999 }, at(monday))
  }
  expect(await listAt('wash')).toEqual(['later'])
  await start('check-in')
  expect(await listAt('wash')).toEqual(['today'])
  expect(await listAt('seat-machine')).toEqual(['later'])

  await workThrough(visitId, ['seat-work'])
  expect(await listAt('seat-machine')).toEqual(['ready'])
  const wait = partsWaitSchema.parse({
    visitId,
    step: keyOf('seat-work'),
    what: 'seat inserts',
    fromWhom: '',
    promisedOn: '2026-03-03',
  })
  await openWait(machinist, wait, at(monday))
  expect(await listAt('seat-machine')).toEqual(['later'])
  // 5:59 in the evening of the 2nd and one minute past midnight of the 3rd, in Chicago.
  expect(await listAt('seat-machine', new Date('2026-03-03T05:59:00Z'))).toEqual(['later'])
  expect(await listAt('seat-machine', new Date('2026-03-03T06:01:00Z'))).toEqual(['today'])
})

it('is read in one statement, and the stations page counts what it lists as ready and started', async () => {
  const { visitId } = await oneHead()
  await oneHead({ rackPlace: 'Rack 1' })
  await startStep(machinist, { visitId, step: keyOf('check-in'), seen: 99_999 }, at(monday))
  expect(await selectsOf(() => seeQueue(machinist, 'front-desk'))).toHaveLength(1)
  const { ready, started } = await seeQueue(machinist, 'front-desk')
  expect([ready.length, started.length]).toEqual([1, 1])
  expect((await seeStations(machinist))['front-desk']).toBe(2)
})

it('a scanned head opens what is begun at the station, then what is ready, then what comes; else nothing', async () => {
  const { visitId, headId } = await oneHead()
  const openAt = async (station: Station) => (await seeOpenStep(machinist, headId, station))?.step ?? null
  expect(await openAt('front-desk')).toEqual(keyOf('check-in'))
  expect(await openAt('seat-machine')).toEqual(keyOf('seat-work'))
  expect(await openAt('flow-bench')).toBeNull()
  await workThrough(visitId, ['seat-work'])
  const bench = (await linesAt('measuring-bench', visitId)).filter(({ list }) => list === 'later')
  expect(bench.length).toBeGreaterThan(0)
  expect(await openAt('measuring-bench')).toEqual({
    stepId: bench[0]?.step.stepId,
    occurrence: bench[0]?.step.occurrence,
    orderId: null,
  })
  expect(await openAt('front-desk')).not.toEqual(keyOf('check-in'))
  await database.client.visitPlace.update({ where: { visitId }, data: { whereabouts: 'handed over' } })
  await database.client.routeStep.updateMany({ where: { visitId }, data: { queue: '' } })
  expect(await openAt('seat-machine')).toBeNull()
})
