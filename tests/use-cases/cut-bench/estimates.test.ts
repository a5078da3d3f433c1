import { beforeEach, describe, expect, it } from 'vitest'
import { planResults } from '@/lib/data/stored/plan'
import { keepEstimateSchema } from '@/lib/schemas/bench'
import { benchFromQuery, emptyBench, type BenchForm } from '@/lib/schemas/bench-question'
import { addCastingSchema, type CastingForm } from '@/lib/schemas/casting'
import type { BookJobForm } from '@/lib/schemas/job'
import { addCasting } from '@/lib/use-cases/castings/add-casting'
import { keepEstimate } from '@/lib/use-cases/cut-bench/keep-estimate'
import { seeBench } from '@/lib/use-cases/cut-bench/see-bench'
import { seeBenchCasting } from '@/lib/use-cases/cut-bench/see-bench-casting'
import { seeEstimate } from '@/lib/use-cases/cut-bench/see-estimate'
import { startBookingFromBench, startBookingFromEstimate } from '@/lib/use-cases/cut-bench/start-booking'
import { printEstimate } from '@/lib/use-cases/cut-bench/print-estimate'
import { seeJob } from '@/lib/use-cases/jobs/see-job'
import { readPdf } from '@/tests/pdf/read-pdf'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { at, book, booking, counter, machinist, monday, openShop, owner, refusalOf } from '../jobs/counter-shop'

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
      taxMillionths: 0,
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
})

describe('a booking begun from the cut bench', () => {
  /** All that can be typed there, each as its own text, so that none can stand in for another. */
  const full = (): BenchForm => ({
    castingId,
    presentCc: '64.2 63.8 64.1 63.9',
    measured: true,
    used: true,
    goneIn: '3 thou',
    targetCc: '61.0',
    stopAtIn: '7 thou',
    sinkIn: '1 thou',
    thicknessIn: '4.1234',
    thicknessNow: '4.2345',
    intakeRecession: '0.021',
    exhaustRecession: '0.022',
    protrusion: '0.031',
    classFlatOnly: true,
    classMinCc: '57.7',
    classMaxCut: '61 thou',
    layout: 'v',
    camInHead: 'no',
    engine: { boreIn: '4.030', strokeIn: '3.4801' },
    figures: { thicknessNewIn: '4.25', intakeValveIn: '2.021', exhaustValveIn: '1.602' },
  })

  /** Where each field of the bench is to be found in the booking. */
  const places: Readonly<Record<keyof BenchForm, (form: BookJobForm) => unknown>> = {
    castingId: (form) => form.heads[0]?.castingId,
    presentCc: (form) => form.note,
    measured: (form) => form.note.includes('64.2 63.8 64.1 63.9 cc, measured'),
    used: (form) => form.heads[0]?.used,
    goneIn: (form) => form.note,
    targetCc: (form) => form.targetCc,
    stopAtIn: (form) => form.note,
    sinkIn: (form) => form.firstPlan?.sinkIn ?? form.note,
    thicknessIn: (form) => form.wanted?.finishedThicknessIn,
    thicknessNow: (form) => form.note,
    intakeRecession: (form) => form.note,
    exhaustRecession: (form) => form.note,
    protrusion: (form) => form.note,
    classFlatOnly: (form) => form.classFlatOnly,
    classMinCc: (form) => form.classMinCc,
    classMaxCut: (form) => form.classMaxCut,
    layout: (form) => form.engine.layout,
    camInHead: (form) => form.engine.camInHead,
    engine: (form) => [form.engine.figures.boreIn, form.engine.figures.strokeIn],
    figures: (form) => form.note,
  }

  it.each(['estimate', 'bench'])('loses nothing that was typed: from the %s', async (from) => {
    const question = full()
    const { id } = await keep({ question, note: 'Before the season.' })
    const form =
      from === 'estimate'
        ? await startBookingFromEstimate(counter, id)
        : await startBookingFromBench(counter, { question, wayId: 'own:flat', angleIn: null })
    for (const [field, place] of Object.entries(places)) {
      const typed = question[field as keyof BenchForm]
      const found = place(form)
      if (typeof typed === 'string' && typeof found === 'string') expect(found, field).toContain(typed)
      else if (field === 'engine') expect(found).toEqual(['4.030', '3.4801'])
      else if (field === 'figures') for (const text of Object.values(question.figures)) expect(found).toContain(text)
      else expect(found, field).toBe(typed)
    }
    // (64.2 + 63.8 + 64.1 + 63.9) / 4 = 256.0 / 4 = 64.00
    expect(form.heads[0]?.presentCc).toBe('64.00 cc')
    expect(form.note).toContain('chosen: Flat cut')
    expect([form.customer.name, form.note.startsWith('Before the season.'), form.estimateId]).toEqual(
      from === 'estimate' ? ['Maren Holt', true, id] : ['', false, ''],
    )
    expect(benchFromQuery(new URLSearchParams(form.benchQuery)).targetCc).toBe(from === 'estimate' ? '' : '61.0')
  })

  it('becomes a job with the chosen split as its first plan, which nobody has accepted, and the prices', async () => {
    const { id } = await keep({
      question: asked({ layout: 'v', engine: { boreIn: '4.030' }, presentCc: '64.0', measured: true }),
      wayId: 'own:angle-flat',
      angleIn: 0.012,
    })
    const { answer } = await seeEstimate(counter, id)
    const form = await startBookingFromEstimate(counter, id)
    expect(form.ordered.map(({ work }) => work)).toEqual(['flow-before', 'flow-after', 'angle-cut', 'flat-cut'])
    expect(form.prices.map(({ text }) => text).sort()).toEqual(
      answer.steps.map(({ label, stepId }) => (stepId === 'flat-cut' ? 'Flat cut' : label)).sort(),
    )
    expect(form.prices.filter(({ unitPrice }) => unitPrice !== '')).toMatchObject([
      { text: 'Flat cut', unitPrice: '95.00', quantity: '1', perHead: true },
    ])
    const prices = form.prices.filter(({ unitPrice }) => unitPrice !== '')
    const job = await book({ ...form, prices })
    expect(job.notPlanned).toBe('')
    const row = await database.client.job.findUniqueOrThrow({
      where: { id: job.jobId },
      include: {
        visits: { include: { events: true } },
        prices: true,
        customer: { include: { contact: true } },
        engine: { include: { figures: true } },
        pairs: { include: { plans: { include: { acceptances: true } } } },
      },
    })
    expect(row.customer.contact?.name).toBe('Maren Holt')
    expect(row.visits[0]).toMatchObject({ targetCc: 61, presentCc: 64 })
    expect(row.engine?.figures.map(({ key, text }) => [key, text])).toEqual([['boreIn', '4.030']])
    expect(row.prices).toMatchObject([{ unitMinor: 9_500, quantityThousandths: 1000 }])
    const [plan] = row.pairs[0]?.plans ?? []
    expect(row.pairs[0]?.plans).toHaveLength(1)
    expect(plan).toMatchObject({ number: 1, kind: 'angle-flat', acceptances: [] })
    // 3 cc at 6 thou are 18 thou at the centroid; 12 thou at the edge are 12 · 0.635 = 7.62 there; 18 − 7.62 = 10.38 flat.
    const record = planResults.read(plan?.results ?? '', 'plan')
    expect(record.angleIn).toBeCloseTo(0.012, 9)
    expect(record.flatIn).toBeCloseTo(0.01038, 5)
    expect(record.flatIn).toBeCloseTo(answer.drawing.cut.flatIn, 9)
    expect(row.visits[0]?.events.map(({ kind }) => kind)).toContain('plan')
    const seen = await seeJob(counter, { number: job.number, now: monday })
    expect(seen.from.estimate).toEqual({ id, number: 'E-0001' })
    expect((await seeEstimate(counter, id)).jobs).toEqual([job.number])
    expect((await refusalOf(book({ estimateId: 'nothing' }))).code).toBe('not-found')
  })

  it('books without a plan where the figures do not allow one, and says why', async () => {
    const form = await startBookingFromBench(counter, { question: asked(), wayId: 'own:flat', angleIn: null })
    const job = await book({ ...form, customer: booking().customer, targetCc: '', prices: [] })
    expect(job.notPlanned).not.toBe('')
    expect(await database.client.planVersion.count()).toBe(0)
    expect((await seeJob(counter, { number: job.number, now: monday })).from.benchQuery).toContain('to=61')
  })

  it('takes over a bought head with what it costs, and the amounts as they were told', async () => {
    const { id } = await keep({ wayId: `${(await seeBenchCasting(counter, castingId)).variants[0]?.id}:leave` })
    const bought = await startBookingFromEstimate(counter, id)
    expect(bought.heads[0]?.source).toBe('bought-cut')
    expect(bought.prices[0]).toMatchObject({ text: '61 cc, cut by its maker', unitPrice: '750.00' })
    const flat = await keep({ wayId: 'own:flat' })
    await database.client.priceItem.update({ where: { id: 'price' }, data: { unitMinor: 12_000 } })
    const form = await startBookingFromEstimate(counter, flat.id)
    expect(form.prices.find(({ text }) => text === 'Flat cut')?.unitPrice).toBe('95.00')
    const asListed = await startBookingFromBench(counter, { question: asked(), wayId: 'own:flat', angleIn: null })
    expect(asListed.prices.find(({ text }) => text === 'Flat cut')?.unitPrice).toBe('120.00')
  })
})

describe('a casting for the bench', () => {
  it('comes with how it can be bought; one that is retired does not come at all', async () => {
    const casting = await seeBenchCasting(counter, castingId)
    expect(casting.facts.openingAreaIn2).toBe(10.1706)
    expect(casting.variants).toMatchObject([
      { nominalCc: 61, supply: 'special', cutByMaker: true, leadDays: 24, costMinor: 75_000 },
    ])
    // What it costs is not the bench's to know.
    const [atBench] = (await seeBenchCasting(machinist, castingId)).variants
    expect(atBench).toMatchObject({ nominalCc: 61, costMinor: null })
    await database.client.castingRecord.update({ where: { id: castingId }, data: { retiredAt: monday } })
    expect((await refusalOf(seeBenchCasting(machinist, castingId))).code).toBe('not-found')
  })
})
