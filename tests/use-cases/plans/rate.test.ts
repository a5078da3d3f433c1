import { beforeAll, describe, expect, it, vi } from 'vitest'
import type { StepId } from '@/lib/core/route/step-ids'
import { defaultShopSettings } from '@/lib/core/shop/settings'
import { effectiveReadings } from '@/lib/core/readings/effective'
import { newId } from '@/lib/data/ids'
import { visitById } from '@/lib/data/visits'
import { loadDossier } from '@/lib/dossier/dossier'
import type { BookedJob } from '@/lib/use-cases/jobs/book-job'
import { seeRates } from '@/lib/use-cases/castings/see-rates'
import { learnedRecord, shownRate } from '@/lib/dossier/casting-rate'
import { headsOfPair, planContext } from '@/lib/dossier/plan-context'
import { seeStep } from '@/lib/use-cases/stations/see-step'
import { correctReading } from '@/lib/use-cases/visits/correct-reading'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { at, casting, machinist, monday, owner, refusalOf } from '../jobs/counter-shop'
import { bookAnother, makeFlatPlan, shopWithJob, workThrough, type Otherwise } from '../release/whole-job'

vi.setConfig({ testTimeout: 120_000, hookTimeout: 240_000 })

/**
 * Every head here goes from 64.0 cc to 61.0 with 18 thou: 3.0 cc, six thou per cc, which is what the shop's guess says
 * (k = 1/6, a quarter of it uncertain). So k stays, and only its uncertainty falls, by hand: a chamber read once is known
 * to √(0.3² + 0.2²/12) = 0.30551 cc, four of them to 0.15275; noise² = 2·0.15275² + (0.5/6)² = 0.053611; between heads 3 % of
 * 1/6, 0.005. Precision: 24² = 576 for the guess and 1/(0.053611/18² + 0.005²) = 5250.3 a cut. One cut: 1/√5826.3 = 0.013101,
 * 7.9 % of k; two: 0.0095016, 5.7 %; three: 0.0078262, 4.7 %.
 */
const precision = (cuts: number): number => 576 + cuts / (0.053611 / 324 + 0.000025)
const partAfter = (cuts: number): number => 6 / Math.sqrt(precision(cuts))

const flatCut = { stepId: 'flat-cut', occurrence: '', orderId: null } as const
const facts = { thouPerCc: 6, openingCentreIn: 4.445, milledWidthIn: 7 }
const pairOf = (job: BookedJob): string => job.heads[0]?.pairId ?? ''
const visitOf = (job: BookedJob, place: 0 | 1): string => job.heads[place]?.visitId ?? ''

let database: TestDatabase
const rate = async (form = 'as-cast') =>
  shownRate(
    await learnedRecord(database.client, {
      castingId: casting,
      form,
      facts,
      depthThou: null,
      settings: defaultShopSettings,
    }),
  )
const cutsShown = async () => (await seeRates(owner, casting))[0]?.cuts ?? []
const owedAtMill = async (visitId: string) =>
  (await loadDossier(database.client, visitId)).route
    .find((step) => step.stepId === 'flat-cut')
    ?.owes.flatMap((owed) => owed.points)
const millCard = async (visitId: string) => (await seeStep(machinist, visitId, flatCut, monday)).plan.pass

async function correct(visitId: string, stepId: StepId, [kind, point]: readonly [string, string], text: string | null) {
  const { readings } = await visitById(database.client, visitId)
  const reading = effectiveReadings(readings).findLast(
    (one) => one.step.stepId === stepId && one.kind === kind && one.point === point,
  )
  const correction = text === null ? ('withdraw' as const) : ('replace' as const)
  const input = {
    visitId,
    readingId: reading?.id ?? '',
    correction,
    text: text ?? '',
    reason: 'digits turned round',
  }
  await correctReading(owner, input, at(monday))
}

describe('a rate learned from the shop’s own cuts', () => {
  let first: BookedJob
  beforeAll(async () => {
    database = await testDatabase()
    first = await shopWithJob(database, ['flat-cut'])
    await workThrough(visitOf(first, 0), ['flat-cut'])
    await workThrough(visitOf(first, 1), ['flat-cut'])
    await makeFlatPlan(first)
  })

  it('is the record’s own before any cut, and at the mill no more than half is advised', async () => {
    expect(await rate()).toMatchObject({ cuts: 0, prior: 'none', uPart: 0.25, proven: false })
    expect(await seeRates(owner, casting)).toEqual([])
    expect(await millCard(visitOf(first, 0))).toMatchObject({
      stopAtThou: 9, // half of 18
      thisPassThou: null,
      then: 'Then cc chamber 1.',
      figures: [
        { label: 'Now', value: '64.0 cc', note: 'measured' },
        { label: 'Target', value: '61.0 cc', note: '' },
        { label: 'Should leave', value: '62.5 cc', note: '' }, // 64 − 9/6
      ],
    })
  })

  it('one head’s cut teaches its mate and the next plan, and not itself twice', async () => {
    await workThrough(visitOf(first, 0), ['final'])
    const learned = await rate()
    expect(learned).toMatchObject({ cuts: 1, proven: false })
    expect(learned.thouPerCc).toBeCloseTo(6, 6)
    expect(learned.uPart).toBeCloseTo(partAfter(1), 4)
    expect(learned.words).toBe('learned from 1 cut, uncertainty ± 8 %: cut in two passes')
    // The mate: 7.9 % and 3 % between heads make √(0.0786² + 0.03²) = 8.4 %.
    expect((await millCard(visitOf(first, 1)))?.rate).toBe(
      '6.00 thou per cc, 1 cut of the shop’s own behind it, uncertainty ± 8 % on this head',
    )
    // The head itself goes by the record and by its own reading at the stop alone: one cut, not two.
    expect((await millCard(visitOf(first, 0)))?.rate).toContain('1 cut of the shop’s own')
    const context = await planContext(database.client, await headsOfPair(database.client, pairOf(first)))
    expect(context.rate).toEqual(learned)
    expect([context.thouPerCc, context.rateWords]).toEqual([learned.thouPerCc, learned.words])
  })

  it('proven at last: a mild flat cut owes its depth alone, but only on a plan kept since', async () => {
    await workThrough(visitOf(first, 1), ['final'])
    expect((await rate()).uPart).toBeCloseTo(partAfter(2), 4)
    expect((await rate()).proven).toBe(false) // two cuts, 5.7 %
    const second = await bookAnother({ ordered: ['flat-cut'] })
    await workThrough(visitOf(second, 0), ['flat-cut'])
    await workThrough(visitOf(second, 1), ['flat-cut'])
    await makeFlatPlan(second)
    await workThrough(visitOf(second, 0), ['final'])
    expect(await rate()).toMatchObject({ cuts: 3, proven: true })
    expect((await rate()).uPart).toBeCloseTo(partAfter(3), 4)
    // Frozen with the plan: what was learned since changes nothing of this route.
    expect(await owedAtMill(visitOf(second, 1))).toEqual(['', 'at-stop', 'at-size'])
    const third = await bookAnother({ ordered: ['flat-cut'] })
    await workThrough(visitOf(third, 0), ['flat-cut'])
    await makeFlatPlan(third)
    expect(await owedAtMill(visitOf(third, 0))).toEqual([''])
    // A pass that stops short can still be measured after.
    const screen = await seeStep(machinist, visitOf(third, 0), flatCut, monday)
    expect(screen.fields.map((field) => field.point)).toEqual(['', 'at-stop'])
  })

  it('follows a correction, and a reading that was withdrawn is gone', async () => {
    const visitId = visitOf(first, 0)
    const cut = async () => (await cutsShown()).find((one) => one.visitId === visitId)
    expect(await cut()).toMatchObject({ whyNot: '' })
    expect((await cut())?.tookCc).toBeCloseTo(3, 9)
    await correct(visitId, 'chambers', ['cc', '3'], '64.5') // 64.1 → 64.5: the mean rises by 0.1
    expect((await cut())?.tookCc).toBeCloseTo(3.1, 9)
    await correct(visitId, 'flat-cut', ['cut-depth', ''], '17 thou')
    expect((await cut())?.depthThou).toBeCloseTo(17, 9)
    await correct(visitId, 'flat-cut', ['cut-depth', ''], null)
    expect(await cut()).toMatchObject({ depthThou: null, whyNot: 'its depth was not measured' })
    expect((await rate()).cuts).toBe(2)
  })

  it('goes by the newest forty of a casting and form, by its index', async () => {
    const { client } = database
    const visit = await client.visit.findUniqueOrThrow({ where: { id: visitOf(first, 0) } })
    const many = Array.from({ length: 60 }, (_, place) => ({ id: newId(monday), place }))
    await client.visit.createMany({ data: many.map(({ id }) => ({ ...visit, id })) })
    await client.shopCut.createMany({
      data: many.map(({ id, place }) => ({
        visitId: id,
        castingId: casting,
        form: 'as-cast',
        seq: 100_000 + place,
        shallowIn: 0.018,
        deepIn: 0.018,
        whyNot: '',
        // The oldest twenty say five thou per cc, the newest forty six.
        beforeCc: 64,
        uBeforeCc: 0.15,
        afterCc: place < 20 ? 60.4 : 61,
        uAfterCc: 0.15,
      })),
    })
    expect(await rate()).toMatchObject({ cuts: 40 })
    expect((await rate()).thouPerCc).toBeCloseTo(6, 6)
    expect(await cutsShown()).toHaveLength(40)
    expect((await rate('opened')).cuts).toBe(0)
    const plan = await client.$queryRawUnsafe<{ detail: string }[]>(
      `EXPLAIN QUERY PLAN SELECT * FROM "ShopCut" WHERE "castingId" = 'a' AND "form" = 'b' AND "visitId" <> 'c' ORDER BY "seq" DESC LIMIT 40`,
    )
    const details = plan.map((row) => row.detail).join('; ')
    expect(details).toContain('ShopCut_castingId_form_seq_idx')
    expect(details).not.toMatch(/SCAN|TEMP B-TREE/)
  })
})

describe('what lies between the two cc', () => {
  it('seat work does: the chamber read at size still teaches, the finished cc alone do not', async () => {
    database = await testDatabase()
    const job = await shopWithJob(database, ['flat-cut', 'seat-work'])
    const visitId = visitOf(job, 0)
    const atSize: Otherwise = (_step, _kind, point) => (point === 'at-size' ? '61.3' : undefined)
    await workThrough(visitId, ['flat-cut', 'seat-work'])
    await makeFlatPlan(job)
    await workThrough(visitId, ['final'], atSize)
    const cut = async () => (await cutsShown())[0]
    expect((await cut())?.whyNot).toBe('')
    expect((await cut())?.tookCc).toBeCloseTo(64.2 - 61.3, 9) // chamber 1
    await correct(visitId, 'flat-cut', ['cc', 'at-size'], null)
    await correct(visitId, 'flat-cut', ['cc', 'at-stop'], null)
    expect(await cut()).toMatchObject({ whyNot: 'seat work between the two cc' })
    expect(await rate()).toMatchObject({ cuts: 0, prior: 'none' })
  })

  it('a casting that is not there is refused', async () => {
    expect((await refusalOf(seeRates(owner, newId(monday)))).code).toBe('not-found')
  })
})
