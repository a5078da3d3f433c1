import { beforeAll, describe, expect, it, vi } from 'vitest'
import { RefusedError, type Refusal } from '@/lib/core/errors'
import { keyOf } from '@/lib/core/route/keys'
import { decideHoldSchema, openHoldSchema, tickStepSchema } from '@/lib/schemas/visit'
import { decideHold } from '@/lib/use-cases/holds/decide-hold'
import { openHold } from '@/lib/use-cases/holds/open-hold'
import type { BookedJob } from '@/lib/use-cases/jobs/book-job'
import { seeJob } from '@/lib/use-cases/jobs/see-job'
import { seeQueue } from '@/lib/use-cases/stations/see-queue'
import { seeStep } from '@/lib/use-cases/stations/see-step'
import { tickStep } from '@/lib/use-cases/visits/tick-step'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { selectsOf } from '@/tests/setup/statements'
import { at, counter, machinist, monday, owner } from '../jobs/counter-shop'
import { bookAnother, shopWithJob, workThrough } from '../release/whole-job'

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 })

let database: TestDatabase
let job: BookedJob
const visitOf = (place: number): string => job.heads[place]?.visitId ?? ''
const tagOf = (place: number): string => job.heads[place]?.tag ?? ''
const chambers = keyOf('chambers')

const tick = async (visitId: string): Promise<Refusal> => {
  try {
    await tickStep(machinist, tickStepSchema.parse({ visitId, step: chambers, seen: 99_999, entry: null }), at(monday))
  } catch (error) {
    if (error instanceof RefusedError) return error.refusal
    throw error
  }
  throw new Error('It was not refused.')
}

beforeAll(async () => {
  database = await testDatabase()
  job = await shopWithJob(database)
  for (const { visitId } of job.heads) await workThrough(visitId, ['chambers'])
})

describe('a held head', () => {
  it('is not ticked onward: the refusal says why and leads to its page; its mate is not stopped', async () => {
    await openHold(
      machinist,
      openHoldSchema.parse({ visitId: visitOf(0), stepId: 'chambers', reason: 'chamber 2 is cracked' }),
      at(monday),
    )
    const { headId } = await database.client.visit.findUniqueOrThrow({ where: { id: visitOf(0) } })
    expect(await tick(visitOf(0))).toMatchObject({
      code: 'hold',
      gaps: [{ message: 'On hold: chamber 2 is cracked', href: `/heads/${headId}` }],
    })
    const owed = await tick(visitOf(1))
    expect(owed.code).toBe('owed')
    expect(owed.gaps?.[0]).toEqual({
      message: 'Chamber 1, chamber 2, chamber 3 and chamber 4 have no cc yet',
      href: `/stations/measuring-bench/heads/${visitOf(1)}?step=chambers`,
    })
  })

  it('is told at its mate’s station, in the queue and on the job, and of its mate nothing is told to it', async () => {
    const told = [{ tag: tagOf(0), reason: 'chamber 2 is cracked' }]
    expect((await seeStep(machinist, visitOf(1), chambers, monday)).matesHeld).toMatchObject(told)
    expect((await seeStep(machinist, visitOf(0), chambers, monday)).matesHeld).toEqual([])
    const { heads } = await seeJob(counter, { number: job.number, now: monday })
    expect(heads.map(({ matesHeld }) => matesHeld.map(({ tag }) => tag))).toEqual([[], [tagOf(0)]])
    const queue = await seeQueue(machinist, 'measuring-bench')
    const lines = [...queue.ready, ...queue.started, ...queue.today, ...queue.later]
    const marksAt = (visitId: string) => lines.filter((line) => line.visitId === visitId).flatMap(({ marks }) => marks)
    const ofMate = marksAt(visitOf(1))
    expect(ofMate.length).toBeGreaterThan(0)
    for (const mark of ofMate) expect(mark).toEqual({ code: 'mate-held', tag: tagOf(0) })
    expect(marksAt(visitOf(0))).toEqual([{ code: 'held', reason: 'chamber 2 is cracked' }])
  })

  it('is asked for at a station without a question more for each head', async () => {
    const few = await selectsOf(() => seeQueue(machinist, 'measuring-bench'))
    for (const { visitId } of (await bookAnother()).heads) await workThrough(visitId, ['chambers'])
    expect(few.length).toBeGreaterThan(0)
    expect(await selectsOf(() => seeQueue(machinist, 'measuring-bench'))).toHaveLength(few.length)
  })

  it('goes on once the owner has decided, and its mate is told nothing more', async () => {
    const hold = await database.client.hold.findFirstOrThrow({ where: { visitId: visitOf(0) } })
    const decision = {
      holdId: hold.id,
      version: hold.version,
      decision: 'rework',
      note: 'weld it',
      customerYes: '',
    }
    await decideHold(owner, decideHoldSchema.parse(decision), at(monday))
    expect((await tick(visitOf(0))).code).toBe('owed')
    expect((await seeStep(machinist, visitOf(1), chambers, monday)).matesHeld).toEqual([])
  })
})
