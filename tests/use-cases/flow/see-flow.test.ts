import { beforeAll, describe, expect, it, vi } from 'vitest'
import type { BookedJob } from '@/lib/use-cases/jobs/book-job'
import { flowChoiceSchema, type ReferenceRun } from '@/lib/schemas/flow'
import { correctReadingSchema, recordReadingsSchema } from '@/lib/schemas/visit'
import type { Actor } from '@/lib/core/access/roles'
import { recordReference } from '@/lib/use-cases/flow/record-reference'
import { seeReferences } from '@/lib/use-cases/flow/see-references'
import { seeFlow } from '@/lib/use-cases/flow/see-flow'
import { seeFlowStep } from '@/lib/use-cases/flow/see-flow-step'
import { correctReading } from '@/lib/use-cases/visits/correct-reading'
import { recordReadings } from '@/lib/use-cases/visits/record-readings'
import { selectsOf } from '@/tests/setup/statements'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { at, casting, counter, machinist, monday, otherCasting, refusalOf } from '../jobs/counter-shop'
import { conditions, shopWithJob } from '../release/whole-job'

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 })

type Run = {
  readonly visitId: string
  readonly occurrence?: string
  /** Port and lift → flow; a reason where it could not be taken. */
  readonly flows: Readonly<Record<string, string>>
  readonly more?: Readonly<Record<string, string>>
  readonly minutes?: number
}

const later = (minutes: number) => new Date(monday.getTime() + minutes * 60_000)

const record = ({ visitId, occurrence = 'before', flows, more = {}, minutes = 0 }: Run) =>
  recordReadings(
    machinist,
    recordReadingsSchema.parse({
      visitId,
      step: { stepId: 'flow', occurrence, orderId: null },
      seen: 999,
      entry: {
        readings: Object.entries(flows).map(([point, text]) =>
          /^\d/.test(text)
            ? { kind: 'flow', point, text, notTaken: null }
            : { kind: 'flow', point, text: '', notTaken: text },
        ),
        instrumentId: null,
        conditions: { ...conditions, ...more },
        takenAt: null,
      },
    }),
    at(later(minutes)),
  )

const choice = (run: readonly string[] = [], from: string | null = null) =>
  flowChoiceSchema.parse({ run: [...run], from: from ?? undefined })

let database: TestDatabase
let job: BookedJob
let headIds: string[]
const visitOf = (place: number): string => job.heads[place]?.visitId ?? ''
const headOf = (place: number): string => headIds[place] ?? ''

beforeAll(async () => {
  database = await testDatabase()
  job = await shopWithJob(database)
  const visits = await database.client.visit.findMany({ where: { id: { in: job.heads.map((one) => one.visitId) } } })
  headIds = job.heads.map(({ visitId }) => visits.find(({ id }) => id === visitId)?.headId ?? '')
})

describe('the flow of a head', () => {
  it('is empty before anything was run, and nobody’s for a head that is not there', async () => {
    expect(await seeFlow(counter, headOf(0), choice())).toMatchObject({
      runs: [],
      comparison: [],
      ratio: null,
    })
    expect(await refusalOf(seeFlow(counter, visitOf(0), choice()))).toMatchObject({ code: 'not-found' })
  })

  it('holds the last run against the first, with the difference worked by hand', async () => {
    await record({
      visitId: visitOf(0),
      flows: { 'intake@0.200': '120', 'intake@0.400': '200', 'intake@0.600': 'coil bind', 'exhaust@0.200': '90' },
    })
    await record({
      visitId: visitOf(0),
      occurrence: 'after',
      minutes: 60,
      flows: { 'intake@0.200': '126', 'intake@0.400': '201', 'intake@0.600': '230' },
    })
    const view = await seeFlow(counter, headOf(0), choice())
    expect(view.runs.map(({ name, ports, by }) => [name.replace(/^T-\d+, /, ''), ports, by])).toEqual([
      ['flow run before', 'intake, exhaust', 'Ivo Penrose'],
      ['flow run after', 'intake', 'Ivo Penrose'],
    ])
    const held = view.comparison[0]?.held[0]
    // 126 − 120 = 6 is 5.0 % of 120; 1 of 200 is 0.5 %, within 2·√2·1 % = 2.8 %.
    expect(
      held?.rows.map(({ lift, before, after, diffCfm, diffPercent, note }) => [
        lift,
        before,
        after,
        diffCfm,
        diffPercent,
        note,
      ]),
    ).toEqual([
      ['0.200 in', '120.0', '126.0', '+6.0', '+5.0', ''],
      ['0.400 in', '200.0', '201.0', '+1.0', '+0.5', 'within the bench’s repeatability'],
      ['0.600 in', null, '230.0', null, null, 'before not taken: coil bind'],
    ])
    // Two points make a straight line before; the means stand low, middle, high, whole.
    expect(held?.means.map(({ lift }) => lift)).toEqual(['Mean, low', 'Mean, middle', 'Mean, high', 'Mean, whole'])
    expect(held).toMatchObject({ differs: [], differentHead: false, refused: '' })
    expect(view.comparison[1]).toMatchObject({ port: 'exhaust', held: [] })
    // 90/120.
    expect(view.ratio?.rows).toEqual([{ lift: '0.200 in', percents: { [view.runs[0]?.id ?? '']: '75.0 %' } }])
  })

  it('a correction counts, in the run it corrects', async () => {
    const wrong = await database.client.reading.findFirstOrThrow({
      where: { point: 'intake@0.400', text: '201' },
    })
    await correctReading(
      machinist,
      correctReadingSchema.parse({
        visitId: visitOf(0),
        readingId: wrong.id,
        correction: 'replace',
        text: '210',
        reason: 'misread',
      }),
      at(later(70)),
    )
    const view = await seeFlow(counter, headOf(0), choice())
    expect(view.runs).toHaveLength(2)
    expect(view.comparison[0]?.held[0]?.rows[1]).toMatchObject({ diffCfm: '+10.0', diffPercent: '+5.0' })
  })

  it('a repeat is a run of its own and tells how well the bench repeats itself', async () => {
    await record({
      visitId: visitOf(0),
      minutes: 10,
      more: { run: '2' },
      flows: { 'intake@0.200': '121.2', 'intake@0.400': '198' },
    })
    const view = await seeFlow(counter, headOf(0), choice())
    expect(view.runs.map(({ name }) => name.replace(/^T-\d+, /, ''))).toEqual([
      'flow run before',
      'flow run before, run 2',
      'flow run after',
    ])
    // Means 120.6 and 199: 2·(0.6/120.6)² + 2·(1/199)² = 0.00010001 over 2 → 0.707 %.
    expect(view.repeatability).toContain('0.7 %')
    expect(view.repeatability).toContain('The shop’s setting is 1.0 %')
    const [first, second] = view.runs
    const held = await seeFlow(counter, headOf(0), choice([first?.id ?? '', second?.id ?? '']))
    expect(held.comparison[0]?.held[0]?.rows[0]).toMatchObject({ diffCfm: '+1.2', diffPercent: '+1.0' })
  })

  it('the mate’s run is headed different head, at another pressure converted and said so', async () => {
    await record({
      visitId: visitOf(1),
      minutes: 20,
      more: { testPressureInH2O: '10', boreFixtureIn: '4.100' },
      flows: { 'intake@0.200': '70' },
    })
    const own = await seeFlow(counter, headOf(0), choice())
    const mate = own.runs.find(({ whose }) => whose === 'mate')
    const before = own.runs[0]
    const view = await seeFlow(counter, headOf(0), choice([before?.id ?? ''], mate?.id))
    expect(view.chosen).toEqual([mate?.id, before?.id])
    const held = view.comparison[0]?.held[0]
    expect(held?.differentHead).toBe(true)
    expect(held?.remarks).toEqual(['Before converted from 10 to 28 inH₂O'])
    expect(held?.differs).toEqual(['bore fixture 4.100 in before, 4.000 in after'])
    // 70·√2.8 = 117.1.
    expect(held?.rows[0]).toMatchObject({ before: '117.1', after: '120.0', diffCfm: '+2.9', diffPercent: '+2.4' })
    expect(view.comparison[0]?.drawnAt).toContain('Drawn at 28 inH₂O')
  })

  it('is read with no more than eight statements, and no more of them when there are more runs', async () => {
    const few = await selectsOf(() => seeFlow(counter, headOf(0), choice()))
    expect(few.length).toBeGreaterThan(3)
    expect(few.length).toBeLessThanOrEqual(8)
    for (const run of ['3', '4', '5']) {
      await record({ visitId: visitOf(0), minutes: 30, more: { run }, flows: { 'exhaust@0.300': '140' } })
    }
    const view = await seeFlow(counter, headOf(0), choice())
    expect(view.runs).toHaveLength(7)
    expect(await selectsOf(() => seeFlow(counter, headOf(0), choice()))).toHaveLength(few.length)
  })

  it('a step knows its next repeat; a step that was not run has none', async () => {
    const step = (occurrence: string) => ({ stepId: 'flow' as const, occurrence, orderId: null })
    const before = await seeFlowStep(machinist, visitOf(0), step('before'))
    expect(before.nextRun).toBe(6)
    expect(before.repeatability).toContain('pooled over')
    const none = await seeFlowStep(machinist, visitOf(1), step('after'))
    expect(none.nextRun).toBeNull()
    expect(none.repeatability).toContain('There are no repeat runs to compare')
  })

  const reference = (readings: readonly ReferenceRun['readings'][number][]) => ({
    castingId: casting,
    readings: [...readings],
    conditions: { ...conditions, chamber: '' },
  })
  const flow = (point: string, text: string) => ({ kind: 'flow' as const, point, text, notTaken: null })

  it('a reference run of the casting is the one before, labelled so, on another head', async () => {
    await recordReference(machinist, reference([flow('intake@0.200', '100')]), at(later(90)))
    const view = await seeFlow(counter, headOf(1), choice())
    const found = view.runs.find(({ whose }) => whose === 'reference')
    expect(found).toMatchObject({ name: 'Halden 4, reference run', by: 'Ivo Penrose', jobNumber: '' })
    const own = view.runs.find(({ whose }) => whose === 'own')
    const held = await seeFlow(counter, headOf(1), choice([own?.id ?? '', found?.id ?? '']))
    expect(held.chosen).toEqual([found?.id, own?.id])
    // 100 at 28 is 100/√2.8 = 59.8 at 10; 70 − 59.76 = 10.2, 17.1 % of it.
    expect(held.comparison[0]?.held[0]).toMatchObject({ differentHead: true })
    expect(held.comparison[0]?.held[0]?.rows[0]).toMatchObject({
      before: '59.8',
      diffCfm: '+10.2',
      diffPercent: '+17.1',
    })
    expect((await seeReferences(counter, casting)).runs.map(({ id }) => id)).toEqual([found?.id])
    expect((await seeReferences(counter, otherCasting)).runs).toEqual([])
  })

  it('two runs of one name are told apart', async () => {
    await recordReference(machinist, reference([flow('intake@0.300', '140')]), at(later(95)))
    const { runs } = await seeReferences(counter, casting)
    expect(runs.map(({ name }) => name)).toEqual(['Halden 4, reference run, no. 1', 'Halden 4, reference run, no. 2'])
  })

  it('a reference run is refused without a figure, with one that cannot be, and from the counter', async () => {
    const count = () => database.client.readingSet.count({ where: { castingId: casting } })
    const before = await count()
    const refused = (actor: Actor, ...readings: ReferenceRun['readings']) =>
      refusalOf(recordReference(actor, reference(readings), at(monday)))
    expect(await refused(machinist)).toMatchObject({ code: 'invalid' })
    expect(await refused(machinist, flow('intake@0.200', '9000'))).toMatchObject({ code: 'out-of-range' })
    expect(await refused(counter, flow('intake@0.200', '100'))).toMatchObject({ code: 'not-allowed' })
    expect(await count()).toBe(before)
  })
})
