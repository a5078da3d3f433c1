import { beforeEach, describe, expect, test } from 'vitest'
import type { Actor } from '@/lib/core/access/roles'
import { parseOutline } from '@/lib/core/cut/outline-text'
import { must } from '@/lib/core/errors'
import { castingFactsOf } from '@/lib/data/known-figures'
import { auditChanges } from '@/lib/data/stored/records'
import { stepDetail } from '@/lib/data/stored/route-step'
import { seedCastings } from '@/lib/demo/castings'
import { loadDossier } from '@/lib/dossier/dossier'
import { addCastingSchema, type AddCasting, type CastingForm } from '@/lib/schemas/casting'
import { addCasting } from '@/lib/use-cases/castings/add-casting'
import { changeCasting } from '@/lib/use-cases/castings/change-casting'
import { retireCasting } from '@/lib/use-cases/back-room/retire'
import { seeCasting, seeCastings } from '@/lib/use-cases/castings/see-castings'
import { book, head } from '../jobs/counter-shop'
import { expectRefused, notOwners, now, staffedShop, type Staffed } from '../people/staff'

const form: CastingForm = {
  name: 'Corrie 70',
  material: 'aluminium',
  chamberCount: '4',
  chamberShape: 'open',
  deepEdge: 'exhaust',
  note: '',
  figures: {
    any: { milledWidthIn: '6.000', thicknessNewIn: '4.2500', thicknessLeastIn: '4,13', spotFaceIn: '22 mm' },
    'as-cast': { nominalCc: '70.0', openingAreaIn2: '10.1706' },
    machined: { nominalCc: '71' },
    opened: {},
  },
  bolts: ['10', '2', '1'].map((label) => ({
    label,
    xIn: '0.75',
    yIn: '',
    diameterIn: '.470',
    boltIn: '7/16',
    lengthIn: '',
    blind: label === '2',
    threadLeftIn: '',
  })),
  variants: [
    {
      variantId: '',
      name: 'bare',
      nominalCc: '70.0',
      supply: 'stock',
      cutByMaker: false,
      leadDays: '4',
      cost: '612.5',
    },
  ],
}
const parse = (more: Partial<CastingForm> = {}): AddCasting => addCastingSchema.parse({ ...form, ...more })

let shop: Staffed
let castingId: string
beforeEach(async () => {
  shop = await staffedShop()
  castingId = (await addCasting(shop.staff.orla, parse(), { now })).castingId
})

const client = () => shop.database.client
const look = async () => ({
  castings: await client().castingRecord.findMany(),
  figures: await client().castingFigure.findMany(),
  outlines: await client().castingOutline.findMany(),
  bolts: await client().castingBolt.findMany(),
  variants: await client().castingVariant.findMany(),
})
const see = async (actor: Actor = shop.staff.orla) => (await seeCasting(actor, castingId)).casting
const change = (version: number, more: Partial<CastingForm>) =>
  changeCasting(shop.staff.orla, { ...parse(more), castingId, version }, { now })

describe('only the owner', () => {
  const deeds = {
    'adds records': (actor: Actor) => addCasting(actor, parse(), { now }),
    'changes them': (actor: Actor) =>
      changeCasting(actor, { ...parse({ name: 'Mine' }), castingId, version: 1 }, { now }),
    'retires them': (actor: Actor) => retireCasting(actor, { castingId, version: 1, retired: true }, { now }),
  }
  const cases = notOwners.flatMap((who) => Object.entries(deeds).map(([what, deed]) => ({ who, what, deed })))
  test.each(cases)('$what: $who is refused', ({ who, deed }) => expectRefused(shop.staff[who], deed, look))

  test('sees what a variant costs, with the counter; a machinist sees the rest', async () => {
    const costs = async (actor: Actor) => (await see(actor)).variants.map(({ costMinor }) => costMinor)
    expect(await costs(shop.staff.orla)).toEqual([61250])
    expect(await costs(shop.staff.tamsin)).toEqual([61250])
    expect(await costs(shop.staff.dov)).toEqual([null])
    expect((await seeCastings(shop.staff.dov)).rows).toHaveLength(1)
  })
})

describe('what was typed', () => {
  test('is kept as typed, beside its value in inches, cc and square inches', async () => {
    const figures = Object.fromEntries(
      (await see()).figures.map(({ form: where, key, ...figure }) => [`${where} ${key}`, figure]),
    )
    expect(figures).toEqual({
      'any milledWidthIn': { value: 6, text: '6.000', unit: 'in' },
      'any thicknessNewIn': { value: 4.25, text: '4.2500', unit: 'in' },
      'any thicknessLeastIn': { value: 4.13, text: '4,13', unit: 'in' },
      // By hand: 22 / 25.4 = 0.866141…
      'any spotFaceIn': { value: expect.closeTo(0.8661417, 6), text: '22 mm', unit: 'mm' },
      'as-cast nominalCc': { value: 70, text: '70.0', unit: 'cc' },
      'as-cast openingAreaIn2': { value: 10.1706, text: '10.1706', unit: 'in²' },
      'machined nominalCc': { value: 71, text: '71', unit: 'cc' },
    })
  })

  test('stands in the order in which one counts bolts', async () => {
    expect((await see()).bolts.map(({ label, boltIn, blind }) => [label, boltIn, blind])).toEqual([
      ['1', 0.4375, false],
      ['2', 0.4375, true],
      ['10', 0.4375, false],
    ])
  })

  test('of a head for six cylinders in line is as long as that head, its bolts and its outline with it', () => {
    const [bolt] = form.bolts
    const long = { milledWidthIn: '6', deckLengthIn: '31.50' }
    const six = {
      ...form,
      figures: { ...form.figures, any: long },
      bolts: [{ ...bolt!, yIn: '31.10' }],
    }
    const parsed = addCastingSchema.safeParse(six)
    expect(parsed.error?.issues ?? []).toEqual([])
    expect(parsed.data?.bolts[0]?.yIn?.value).toBe(31.1)
    expect(must(parseOutline('2 28.0\n5 28.0\n5 31\n2 31')).map(({ yIn }) => yIn)).toEqual([28, 28, 31, 31])
  })

  test.each([
    [
      'thicker at least than when new',
      { any: { thicknessNewIn: '4.0', thicknessLeastIn: '4.1' } },
      'any.thicknessLeastIn',
    ],
    ['a bolt thicker than its hole', { any: { boltIn: '0.5', boltHoleIn: '0.47' } }, 'any.boltIn'],
    [
      'an opening outside the deck',
      { any: { milledWidthIn: '6' }, machined: { openingCentreIn: '6.2' } },
      'machined.openingCentreIn',
    ],
    ['no figure at all', { any: { milledWidthIn: 'wide' } }, 'any.milledWidthIn'],
    ['an impossible one', { 'as-cast': { nominalCc: '4000' } }, 'as-cast.nominalCc'],
  ])('%s is refused at its field', (_, figures, path) => {
    const empty = { any: {}, 'as-cast': {}, machined: {}, opened: {} }
    const parsed = addCastingSchema.safeParse({ ...form, figures: { ...empty, ...figures } })
    expect(parsed.error?.issues.map((issue) => issue.path.join('.'))).toEqual([`figures.${path}`])
  })

  test('a cost with more decimals than the currency has is refused at its field', async () => {
    const [bare] = form.variants
    const input = parse({ variants: [{ ...bare!, cost: '612.505' }] })
    await expect(addCasting(shop.staff.orla, input, { now })).rejects.toMatchObject({
      refusal: { code: 'invalid', fields: { 'variants.0.cost': expect.any(String) } },
    })
  })
})

describe('a traced outline', () => {
  /** 3 in across from x = 2, 3 in along: 9 in², centre 3.5. */
  const square = ' 2.000;0\n5,0;0\n5;3\n\n2;3 '
  const traced = (outline: string, asCast: object = {}) => ({
    figures: { ...form.figures, 'as-cast': { nominalCc: '70.0', ...asCast } },
    outlines: { 'as-cast': outline },
  })
  const refusals = (outline: string, asCast: object = {}) => {
    const parsed = addCastingSchema.safeParse({ ...form, ...traced(outline, asCast) })
    return parsed.error?.issues.map(({ path, message }) => [path.join('.'), message] as const) ?? []
  }
  const facts = async (chamberForm: string) =>
    castingFactsOf(
      await client().castingRecord.findUniqueOrThrow({
        where: { id: castingId },
        include: { figures: true, outlines: true },
      }),
      chamberForm,
    )

  test('is kept as typed, and gives its chamber form the area and the centre', async () => {
    expect((await facts('as-cast')).openingCentreIn).toBeUndefined()
    await change(1, traced(square))
    expect((await see(shop.staff.dov)).outlines).toEqual([{ form: 'as-cast', points: square }])
    expect(await facts('as-cast')).toMatchObject({ openingAreaIn2: 9, openingCentreIn: 3.5, nominalCc: 70 })
    expect(await facts('machined')).not.toHaveProperty('openingAreaIn2')
  })

  test('leaves a typed figure standing that agrees to 1 %', async () => {
    await change(1, traced(square, { openingAreaIn2: '9.08', openingCentreIn: '3.47' }))
    expect(await facts('as-cast')).toMatchObject({ openingAreaIn2: 9.08, openingCentreIn: 3.47 })
  })

  test('refuses a typed figure that does not, with both', () => {
    // 1 % of 9 is 0.09, of 3.5 is 0.035: 9.1 and 3.46 are further off than that.
    expect(refusals(square, { openingAreaIn2: '9.1', openingCentreIn: '3.46' })).toEqual([
      ['figures.as-cast.openingAreaIn2', expect.stringMatching(/9\.1 in² .* 9\.0000 in².*1 %/)],
      ['figures.as-cast.openingCentreIn', expect.stringMatching(/3\.46 in .* 3\.500 in.*1 %/)],
    ])
  })

  test.each([
    ['that crosses itself', '2 0\n5 3\n5 0\n2 3', /from line 1 to 2, and from line 3 to 4/],
    ['of two points', '2 0\n5 3', /three points or more/],
    ['that leaves the deck', '2 0\n6.1 0\n5 3', /^Line 2: .*0 to 6 in/],
    ['that is none', '2 0\nfive nought\n5 3', /^Line 2: “five nought”/],
    ['too small for a chamber', '2 0\n2.1 0\n2.1 0.1', /opening area/],
  ])('%s is refused at its field', (_, outline, message) => {
    expect(refusals(outline)).toEqual([['outlines.as-cast', expect.stringMatching(message)]])
  })

  test('needs the milled width', () => {
    const figures = { ...form.figures, any: {} }
    const parsed = addCastingSchema.safeParse({ ...form, ...traced(square), figures })
    expect(parsed.error?.issues.map(({ path, message }) => [path.join('.'), message])).toEqual([
      ['outlines.as-cast', 'Needs milled width.'],
    ])
  })

  test('that is changed or taken away stands in the trail with both sides', async () => {
    await change(1, traced(square))
    await change(2, traced('2 0\n5 0\n2 3'))
    await change(3, traced(' \n'))
    const entries = await client().auditEntry.findMany({
      where: { action: 'casting.change' },
      orderBy: { seq: 'asc' },
    })
    expect(entries.map(({ seq, changes }) => auditChanges.read(changes, seq)['as-cast.outline'])).toEqual([
      { from: '', to: square },
      { from: square, to: '2 0\n5 0\n2 3' },
      { from: '2 0\n5 0\n2 3', to: '' },
    ])
    expect((await look()).outlines).toEqual([])
  })

  test('reaches the facts of heads that are here', async () => {
    await change(1, traced(square))
    await book({ heads: [head({ castingId })] }, { now }, shop.staff.tamsin)
    const { id } = await client().visit.findFirstOrThrow()
    const { visit } = await loadDossier(client(), id)
    expect(castingFactsOf(visit.head.casting, visit.head.chamberForm).openingAreaIn2).toBe(9)
  })
})

describe('a change', () => {
  test('adds, alters and takes away figures, and the trail has both sides of each', async () => {
    const any = { milledWidthIn: '6.000', thicknessNewIn: '4.240', landNewIn: '0.46', spotFaceIn: '22 mm' }
    await change(1, { figures: { ...form.figures, any } })
    const entry = await client().auditEntry.findFirstOrThrow({ orderBy: { seq: 'desc' } })
    expect(auditChanges.read(entry.changes, entry.seq)).toEqual({
      'any.thicknessNewIn': { from: '4.2500 in', to: '4.240 in' },
      'any.thicknessLeastIn': { from: '4,13 in', to: '' },
      'any.landNewIn': { from: '', to: '0.46 in' },
    })
    expect((await see()).figures.filter(({ key }) => key === 'thicknessLeastIn')).toEqual([])
  })

  test('keeps a variant’s identity, and one taken off the list stays on record', async () => {
    const [bare] = (await see()).variants
    const second = { ...form.variants[0]!, name: 'cut', variantId: '' }
    await change(1, {
      variants: [{ ...form.variants[0]!, variantId: bare!.variantId, leadDays: '9' }, second],
    })
    expect((await see()).variants.map(({ variantId, leadDays }) => [variantId === bare!.variantId, leadDays])).toEqual([
      [true, 9],
      [false, 4],
    ])
    await change(2, { variants: [] })
    expect((await see()).variants).toEqual([])
    expect(await client().castingVariant.count({ where: { castingId, retiredAt: now } })).toBe(2)
  })

  test('cannot reach the variant of another casting', async () => {
    const other = await addCasting(shop.staff.orla, parse({ name: 'Other' }), { now })
    const theirs = (await seeCasting(shop.staff.orla, other.castingId)).casting.variants[0]!
    await change(1, { variants: [{ ...form.variants[0]!, variantId: theirs.variantId, name: 'taken over' }] })
    expect((await seeCasting(shop.staff.orla, other.castingId)).casting.variants).toEqual([theirs])
  })

  test('that comes late is a conflict, and nothing changes', async () => {
    await change(1, { name: 'Corrie 70 wide' })
    const before = await look()
    await expect(change(1, { name: 'Corrie', bolts: [] })).rejects.toMatchObject({
      refusal: { code: 'conflict' },
    })
    expect(await look()).toEqual(before)
  })

  test('reaches the routes of heads that are here', async () => {
    await book({ heads: [head({ castingId })] }, { now }, shop.staff.tamsin)
    const owed = async () => {
      const step = await client().routeStep.findFirstOrThrow({ where: { stepId: 'chambers' } })
      return stepDetail.read(step.detail, '').owes.find(({ kind }) => kind === 'cc')?.points
    }
    expect(await owed()).toEqual(['1', '2', '3', '4'])
    await change(1, { chamberCount: '3' })
    expect(await owed()).toEqual(['1', '2', '3'])
  })
})

test('a retired record stands last and can be taken back', async () => {
  await addCasting(shop.staff.orla, parse({ name: 'Zebra 10' }), { now })
  await retireCasting(shop.staff.orla, { castingId, version: 1, retired: true }, { now })
  expect((await seeCastings(shop.staff.orla)).rows.map(({ name, retired }) => [name, retired])).toEqual([
    ['Zebra 10', false],
    ['Corrie 70', true],
  ])
  await retireCasting(shop.staff.orla, { castingId, version: 2, retired: false }, { now })
  expect((await see()).retired).toBe(false)
})

describe('the demo’s castings', () => {
  test('are six, one of them with nothing known of its new thickness', async () => {
    const ids = await seedCastings(shop.staff.orla, now)
    const thick = await client().castingFigure.findMany({
      where: { key: 'thicknessNewIn', castingId: { in: Object.values(ids) } },
    })
    const { old, ...known } = ids
    expect(Object.values(known)).toHaveLength(5)
    expect(new Set(thick.map((figure) => figure.castingId))).toEqual(new Set(Object.values(known)))
    expect(old).not.toBe('')
  })

  test('the closed one was traced, and what was typed beside it agrees', async () => {
    const { closed } = await seedCastings(shop.staff.orla, now)
    const rows = await client().castingOutline.findMany()
    expect(rows.map((row) => [row.castingId, row.form])).toEqual([[closed, 'as-cast']])
    const points = rows[0]!.points.split('\n').map((line) => line.split(' ').map(Number))
    expect(points).toHaveLength(24)
    // Another way than the core's: strips between the points, each a trapezium down to x = 0.
    const strips = points.map(([x = 0, y = 0], at) => {
      const [x2 = 0, y2 = 0] = points[(at + 1) % points.length]!
      return { area: ((x + x2) / 2) * (y2 - y), moment: ((x * x + x * x2 + x2 * x2) / 6) * (y2 - y) }
    })
    const [area, moment] = (['area', 'moment'] as const).map((of) =>
      strips.reduce((sum, strip) => sum + strip[of], 0),
    ) as [number, number]
    expect(Math.abs(area) / 8.74).toBeCloseTo(1, 2)
    expect(moment / area / 3.62).toBeCloseTo(1, 2)
  })

  test('the wedge is 6.0 thou per cc, and 20 flat with 63 at the deep edge takes 10 cc', async () => {
    const { wedge } = await seedCastings(shop.staff.orla, now)
    const rows = await client().castingFigure.findMany({
      where: { castingId: wedge, form: { in: ['any', 'as-cast'] } },
    })
    const value = (key: string) => rows.find((row) => row.key === key)!.value
    // Thou per cc = 1000/(16.387064·A) [1 in³ = 16.387064 cm³, exact]. Common practice: about 0.006 in per cc.
    expect(1000 / (16.387064 * value('openingAreaIn2'))).toBeCloseTo(6, 3)
    // ΔV = A·(f + w·x/W): 0.020 + 0.063·0.635 = 0.060005 in over 10.1706 in² = 0.610287 in³ = 10.0008 cc.
    const share = value('openingCentreIn') / value('milledWidthIn')
    expect(share).toBeCloseTo(0.635, 10)
    expect(16.387064 * value('openingAreaIn2') * (0.02 + 0.063 * share)).toBeCloseTo(10.0008, 3)
  })
})
