import { beforeEach, describe, expect, it } from 'vitest'
import { emptyBench, keepEstimateSchema, type BenchForm } from '@/lib/schemas/bench'
import { bookingFromBench } from '@/lib/schemas/booking-from-bench'
import { addCastingSchema, type CastingForm } from '@/lib/schemas/casting'
import { addCasting } from '@/lib/use-cases/castings/add-casting'
import { keepEstimate } from '@/lib/use-cases/cut-bench/keep-estimate'
import { seeBench } from '@/lib/use-cases/cut-bench/see-bench'
import { seeBenchCasting } from '@/lib/use-cases/cut-bench/see-bench-casting'
import { seeEstimate } from '@/lib/use-cases/cut-bench/see-estimate'
import { printEstimate } from '@/lib/use-cases/cut-bench/print-estimate'
import { readPdf } from '@/tests/pdf/read-pdf'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { at, book, counter, machinist, monday, openShop, owner, refusalOf } from '../jobs/counter-shop'

/** Six thou per cc (10.1706 in²), the chamber's centre at 0.635 of the width: 3 cc are 18 thou flat [common practice]. */
const wedge: CastingForm = {
  name: 'Corrie 64',
  material: 'aluminium',
  chamberCount: '4',
  chamberShape: 'closed',
  deepEdge: 'exhaust',
  note: '',
  figures: {
    any: { milledWidthIn: '7.000' },
    'as-cast': { nominalCc: '64.0', openingAreaIn2: '10.1706', openingCentreIn: '4.445' },
    machined: {},
    opened: {},
  },
  bolts: [],
  variants: [
    {
      variantId: '',
      name: '61 cc, cut by its maker',
      nominalCc: '61.0',
      supply: 'special',
      cutByMaker: true,
      leadDays: '24',
      cost: '750.00',
    },
  ],
}

let database: TestDatabase
let castingId: string
beforeEach(async () => {
  database = await testDatabase()
  await openShop(database)
  castingId = (await addCasting(owner, addCastingSchema.parse(wedge), { now: monday })).castingId
  await database.client.priceItem.create({
    data: {
      id: 'price',
      stepId: 'flat-cut',
      text: 'Flat cut',
      unitMinor: 9_500,
      taxBasisPoints: 0,
      createdAt: monday,
    },
  })
})

const asked = (more: Partial<BenchForm> = {}): BenchForm => ({
  ...emptyBench(castingId),
  used: false,
  targetCc: '61',
  ...more,
})

const keep = (more: Partial<Parameters<typeof keepEstimateSchema.parse>[0] & object> = {}, actor = counter) =>
  keepEstimate(
    actor,
    keepEstimateSchema.parse({
      question: asked(),
      wayId: 'own:flat',
      angleIn: null,
      forWhom: 'Maren Holt',
      note: '',
      ...more,
    }),
    at(monday),
  )

describe('a kept estimate', () => {
  it('holds the question as typed and the answer worked out here: 3 cc, 18 thou, its price', async () => {
    const { id, number } = await keep()
    expect(number).toBe('E-0001')
    const kept = await seeEstimate(counter, id)
    expect(kept.question).toEqual(asked())
    expect(kept.castingName).toBe('Corrie 64')
    expect(kept.answer.title).toBe('Flat cut, 18 thou')
    expect(kept.answer.priceMinor).toBe(9_500)
    expect(kept.answer.others.map(({ title }) => title)).toContain('Bought in, already cut')
    expect((await keep()).number).toBe('E-0002')
  })

  it('takes the place the slider stood at: 10 thou at the edge leave 18 − 6.35 thou flat', async () => {
    const { id } = await keep({ angleIn: 0.01 })
    const { answer } = await seeEstimate(counter, id)
    expect(answer.drawing.cut.angleIn).toBeCloseTo(0.01, 12)
    expect(answer.drawing.cut.flatIn).toBeCloseTo(0.018 - 0.00635, 6)
    expect(answer.kind).toBe('angle-flat')
  })

  it('is not kept for a way that is ruled out, nor for one that is no answer', async () => {
    const flatOnly = { question: asked({ classFlatOnly: true }), wayId: 'own:angle-flat' }
    expect((await refusalOf(keep(flatOnly))).code).toBe('unreachable')
    expect((await refusalOf(keep({ wayId: 'own:sideways' }))).code).toBe('not-found')
    expect(await database.client.estimate.count()).toBe(0)
  })

  it('says needs … with the record’s words for what was not known', async () => {
    const { id } = await keep()
    const { answer } = await seeEstimate(counter, id)
    expect(answer.unknown.find(({ label }) => label === 'Compression ratio')?.needs).toContain('bore')
  })

  it('any of the staff may keep one; prices are for counter and owner alone', async () => {
    const { id } = await keep({}, machinist)
    expect((await seeEstimate(machinist, id)).answer.priceMinor).toBeNull()
    expect((await seeEstimate(owner, id)).answer.priceMinor).toBe(9_500)
    expect((await seeBench(machinist, castingId)).shop.prices).toBeNull()
    expect((await seeBench(counter, castingId)).shop.prices).toEqual({ 'flat-cut': 9_500 })
  })

  it('prints on one page what the screen says, and the price only for those who may see it', async () => {
    const { id } = await keep({ note: 'Wants it before the season.' })
    const paper = await readPdf(await (await printEstimate(counter, id, monday)).bytes())
    expect(paper.pages).toHaveLength(1)
    for (const words of [
      'E-0001',
      'Maren Holt',
      'Flat cut, 18 thou',
      '$95.00',
      'Wants it before the season.',
      '61.0 cc',
    ])
      expect(paper.text).toContain(words)
    const blind = await readPdf(await (await printEstimate(machinist, id, monday)).bytes())
    expect(blind.text).not.toContain('95.00')
    expect(blind.text).toContain('Flat cut, 18 thou')
  })

  it('becomes a job that knows where it comes from, with nothing typed twice', async () => {
    const { id } = await keep({
      question: asked({ layout: 'v', engine: { boreIn: '4.030' } }),
      wayId: 'own:angle-flat',
    })
    const { question, answer } = await seeEstimate(counter, id)
    const form = bookingFromBench(question, answer.kind, id)
    expect(form.ordered.map(({ work }) => work)).toEqual(['flow-before', 'flow-after', 'angle-cut', 'flat-cut'])
    const { customer: _none, ...rest } = form
    const job = await book(rest)
    const row = await database.client.job.findUniqueOrThrow({
      where: { id: job.jobId },
      include: { visits: true, engine: { include: { figures: true } } },
    })
    expect(row.estimateId).toBe(id)
    expect(row.visits[0]?.targetCc).toBe(61)
    expect(row.engine?.figures.map(({ key, text }) => [key, text])).toEqual([['boreIn', '4.030']])
    expect((await refusalOf(book({ estimateId: 'nothing' }))).code).toBe('not-found')
  })
})

describe('a casting for the bench', () => {
  it('comes with how it can be bought; one that is retired does not come at all', async () => {
    const casting = await seeBenchCasting(machinist, castingId)
    expect(casting.facts.openingAreaIn2).toBe(10.1706)
    expect(casting.variants).toMatchObject([
      { nominalCc: 61, supply: 'special', cutByMaker: true, leadDays: 24, costMinor: 75_000 },
    ])
    await database.client.castingRecord.update({ where: { id: castingId }, data: { retiredAt: monday } })
    expect((await refusalOf(seeBenchCasting(machinist, castingId))).code).toBe('not-found')
  })
})
