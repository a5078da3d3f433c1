import { beforeAll, describe, expect, it, vi } from 'vitest'
import { changeInstrumentSchema } from '@/lib/schemas/shop'
import { correctReadingSchema, openHoldSchema, recordReadingsSchema } from '@/lib/schemas/visit'
import { seeHead, type HeadView } from '@/lib/use-cases/heads/see-head'
import { openHold } from '@/lib/use-cases/holds/open-hold'
import { changeInstrument } from '@/lib/use-cases/shop/change-instrument'
import { returnAsIs } from '@/lib/use-cases/visits/return-as-is'
import { correctReading } from '@/lib/use-cases/visits/correct-reading'
import { recordReadings } from '@/lib/use-cases/visits/record-readings'
import type { TestDatabase } from '@/tests/setup/database'
import { selectsOf } from '@/tests/setup/statements'
import { at, book, head, machinist, monday, owner } from '../jobs/counter-shop'
import { shopReadyToRelease, workThrough } from '../release/whole-job'

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 })

let database: TestDatabase
let headId: string
let mateId: string
let visitId: string
let jobNumber: string
const instrumentId = '019caed9-4300-7000-8000-0000000000b1'
const headOf = async (id: string) =>
  (await database.client.visit.findUniqueOrThrow({ where: { id }, include: { job: true } })).headId
const seen = (): Promise<HeadView> => seeHead(owner, headId)

beforeAll(async () => {
  const ready = await shopReadyToRelease()
  const { job, first, second } = ready
  database = ready.database
  await database.client.instrument.create({
    data: { id: instrumentId, name: 'Burette 50', kind: 'burette', lastCheckedOn: '2026-02-20', createdAt: monday },
  })
  ;[visitId, jobNumber] = [first.visitId, job.number]
  ;[headId, mateId] = [await headOf(first.visitId), await headOf(second.visitId)]
})

describe('the record of a head', () => {
  it('tells the volume of every chamber at each stage, held like for like', async () => {
    const { chamberTrend } = await seen()
    expect(chamberTrend.map(({ label, texts, fitted }) => [label, texts, fitted])).toEqual([
      ['as came', ['64.2', '63.8', '64.1', '63.9'], 'this head’s own valves, the engine’s own plug'],
      ['at first stop', ['62.0', null, null, null], ''],
      ['at size', ['61.0', null, null, null], ''],
      ['finished', ['60.9', '61.1', '61.2', '60.8'], 'this head’s own valves, the engine’s own plug'],
    ])
    expect(chamberTrend[0]?.target).toMatchObject({ cc: 61, text: '61.0 cc' })
    expect(chamberTrend.map(({ notLike }) => notLike)).toEqual([
      '',
      'valves and plug not noted here',
      'valves and plug not noted',
      'valves and plug not noted before',
    ])
  })

  it('tells the corners and what is gone since new, with what was cut after they were measured', async () => {
    const { thickness, newThickness } = await seen()
    expect(newThickness).toBe('4.5000 in')
    expect(thickness.stages.map(({ label, corners, gone }) => [label, corners, gone])).toEqual([
      ['as came', ['4.5000 in', '4.5000 in', '4.5000 in', '4.5000 in'], '0.0000 in'],
    ])
    // 4.500 new, 4.500 measured, 18 thou cut after that.
    expect(thickness.removed).toContain('0.0180 in at the deepest since new')
    expect(thickness.removed).toContain('0.0180 in of it by the depth cut since')
  })

  it('keeps an answer that was corrected, and one that was withdrawn, with reason, by whom and when', async () => {
    const volume = (view: HeadView, text: string) =>
      view.visits[0]?.readings.find((line) => line.label === 'Chamber volume' && line.text.startsWith(text))
    const correct = async (text: string, correction: 'replace' | 'withdraw', now: string, reason: string) =>
      correctReading(
        machinist,
        correctReadingSchema.parse({
          visitId,
          readingId: volume(await seen(), text)?.id,
          correction,
          text: now,
          reason,
        }),
        at(monday),
      )
    await correct('60.9', 'replace', '60.7', 'burette misread')
    await correct('60.7', 'replace', '60.8', 'misread once more')
    const line = (await seen()).visits[0]?.readings.find(({ earlier }) => earlier.length > 0)
    expect(line).toMatchObject({
      text: '60.8 cc',
      correction: 'misread once more',
      by: 'Ivo Penrose',
      withdrawn: false,
    })
    expect(line?.earlier.map(({ text, by }) => [text, by])).toEqual([
      ['60.9 cc', 'Greta Sund'],
      ['60.7 cc', 'Ivo Penrose'],
    ])
    await correct('62.0', 'withdraw', '', 'of the mate')
    const after = await seen()
    expect(after.visits[0]?.readings.find(({ withdrawn }) => withdrawn)).toMatchObject({
      text: 'withdrawn',
      correction: 'of the mate',
      earlier: [{ text: '62.0 cc' }],
    })
    expect(after.chamberTrend.map(({ label }) => label)).toEqual(['as came', 'at size', 'finished'])
  })

  it('names the instrument with the day it had last been checked when it was used, not since', async () => {
    const step = { stepId: 'chambers', occurrence: '', orderId: null } as const
    const reading = { kind: 'cc', point: '1', text: '64.2', notTaken: null, repeat: 'again' } as const
    const read = (instrumentId: string) =>
      recordReadings(
        machinist,
        recordReadingsSchema.parse({
          visitId,
          step,
          seen: 999,
          entry: { readings: [reading], instrumentId, conditions: {}, takenAt: null },
        }),
        at(monday),
      )
    const checked = async (day: string) =>
      changeInstrument(
        owner,
        changeInstrumentSchema.parse({
          instrumentId,
          name: 'Burette 50',
          kind: 'burette',
          lastCheckedOn: day,
          dueOn: '',
          retired: false,
          version: (await database.client.instrument.findUniqueOrThrow({ where: { id: instrumentId } })).version,
        }),
        at(monday),
      )
    const told = async () =>
      (await seen()).visits[0]?.readings.map(({ instrument }) => instrument).filter((words) => words !== '')
    await read(instrumentId)
    expect(await told()).toEqual(['Burette 50, last checked 2026-02-20'])
    await checked('2026-03-01')
    await read(instrumentId)
    await checked('')
    await read(instrumentId)
    expect(await told()).toEqual([
      'Burette 50, last checked 2026-02-20',
      'Burette 50, last checked 2026-03-01',
      'Burette 50, never checked',
    ])
  })

  it('warns of a mate that is held, and only of the mate', async () => {
    const [first] = (await seen()).visits
    expect(first?.matesHeld).toEqual([])
    const mate = (await seeHead(owner, mateId)).visits[0]
    await openHold(
      machinist,
      openHoldSchema.parse({ visitId: mate?.visitId, stepId: null, reason: 'crack by chamber 2' }),
      at(monday),
    )
    const mateTag = (await seeHead(owner, mateId)).tag
    expect((await seen()).visits[0]?.matesHeld).toMatchObject([{ tag: mateTag, reason: 'crack by chamber 2' }])
    expect((await seeHead(owner, mateId)).visits[0]?.matesHeld).toEqual([])
  })

  /** The customer takes it back unfinished, and it comes again some weeks later. */
  async function comesBack(lastVisitId: string, weeks: number) {
    const weeksLater = (count: number) => at(new Date(monday.getTime() + count * 7 * 86_400_000))
    await returnAsIs(owner, { visitId: lastVisitId, reason: 'the customer needs it today' }, weeksLater(weeks - 1))
    const comeback = head({ headId, comeback: true, comebackCause: 'a seat leaks', comebackPays: 'the shop' })
    const job = await book({ heads: [comeback], ordered: [{ work: 'seat-work', note: '' }] }, weeksLater(weeks))
    await workThrough(job.heads[0]?.visitId ?? '', ['seat-work'])
    return job
  }

  it('links a comeback both ways, and asks no more questions of the database for more visits', async () => {
    const again = await comesBack(visitId, 1)
    const view = await seen()
    expect(view.visits.map(({ jobNumber: number }) => number)).toEqual([again.number, jobNumber])
    const told = { cause: 'a seat leaks', pays: 'the shop' }
    expect(view.visits[0]?.comebackOf).toEqual({ jobNumber, ...told })
    expect(view.visits[1]?.cameBackAs).toEqual([{ jobNumber: again.number, ...told }])
    expect(view.visits[1]?.comebackOf).toBeNull()
    // What was cut on earlier visits is asked for once there is one, whatever their number.
    const few = await selectsOf(seen)
    await comesBack(again.heads[0]?.visitId ?? '', 2)
    const many = await selectsOf(seen)
    expect((await seen()).visits).toHaveLength(3)
    expect(few.length).toBeGreaterThan(2)
    expect(many.length).toBe(few.length)
  })
})
