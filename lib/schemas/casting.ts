import { chamberShapes } from '@/lib/core/casting/chamber-shape'
import { z } from 'zod'
import {
  castingFigureKeys,
  castingFigures,
  chamberForms,
  type CastingFigureKey,
  type ChamberForm,
} from '@/lib/core/casting/figures'
import { centroidShareOf, shareFact } from '@/lib/core/cut/split'
import { knownFacts } from '@/lib/core/known-facts'
import { tracedOpening } from '@/lib/core/cut/outline-text'
import { formatFigure } from '@/lib/core/units/format-figure'
import { typedFigure } from '@/lib/core/units/typed-figure'
import { requiredText, optionalFigure, words, type Figure } from './figure'
import { optionalAmount } from './money'
import { text } from './text'

/** Where a figure belongs: to one chamber form, or to the casting whatever its form. */
export const figureForms = ['any', ...chamberForms] as const
export type FigureForm = (typeof figureForms)[number]

export type PerFormKey = {
  [K in CastingFigureKey]: (typeof castingFigures)[K]['perForm'] extends true ? K : never
}[CastingFigureKey]
export type SharedKey = Exclude<CastingFigureKey, PerFormKey>

export const perFormKeys = castingFigureKeys.filter((key): key is PerFormKey => castingFigures[key].perForm)
export const sharedKeys = castingFigureKeys.filter((key): key is SharedKey => !castingFigures[key].perForm)

const typedOrEmpty = (key: CastingFigureKey) => optionalFigure(castingFigures[key].quantity).prefault('')
type Field = ReturnType<typeof typedOrEmpty>

/** One field a key; the cast only tells the compiler that the keys put in are the keys that come out. */
const fieldsOf = <K extends CastingFigureKey>(keys: readonly K[]) =>
  z.object(Object.fromEntries(keys.map((key) => [key, typedOrEmpty(key)])) as Record<K, Field>)

const perForm = fieldsOf(perFormKeys).prefault({})

/** Kept as typed; empty lines alone are none. */
const outline = text()
  .max(20_000, 'Use 20,000 characters at most.')
  .transform((text) => (text.trim() === '' ? '' : text))
  .prefault('')
const noOutlines = { 'as-cast': '', machined: '', opened: '' }

/** What each figure of a single bolt is: its limits are those of the calculations. */
export const boltQuantities = {
  xIn: 'length',
  yIn: 'alongHead',
  diameterIn: 'boltDiameter',
  boltIn: 'boltDiameter',
  lengthIn: 'boltHoleLength',
  threadLeftIn: 'holeDepth',
} as const

const bolt = z.object({
  label: requiredText('Enter a name for the bolt, such as "1" or "front dowel side".', 60),
  xIn: optionalFigure(boltQuantities.xIn),
  yIn: optionalFigure(boltQuantities.yIn),
  diameterIn: optionalFigure(boltQuantities.diameterIn),
  boltIn: optionalFigure(boltQuantities.boltIn),
  lengthIn: optionalFigure(boltQuantities.lengthIn),
  blind: z.boolean(),
  threadLeftIn: optionalFigure(boltQuantities.threadLeftIn),
})

const variant = z.object({
  /** '' for one that is new. */
  variantId: text(),
  name: requiredText('Enter a name for the variant.', 120),
  nominalCc: optionalFigure('chamberVolume'),
  supply: z.enum(['stock', 'special']),
  cutByMaker: z.boolean(),
  leadDays: text()
    .trim()
    .regex(/^\d{0,3}$/, 'Enter whole days.')
    .transform((days) => (days === '' ? null : Number(days))),
  /** An amount as typed; how many decimals it may have is the shop's currency's to say. */
  cost: optionalAmount,
})

const facts = z.object({
  name: requiredText('Enter the name used in the shop.', 120),
  material: requiredText('Enter the material.', 60),
  chamberCount: text()
    .trim()
    .regex(/^([1-9]|1[0-2])$/, 'Enter the number of chambers, 1 to 12.')
    .transform(Number),
  chamberShape: z.enum(chamberShapes, 'Choose open, closed or flat deck.'),
  deepEdge: z.enum(['exhaust', 'intake'], 'Choose the deep edge of an angle cut.'),
  note: words(2000),
  figures: z.object({
    any: fieldsOf(sharedKeys).prefault({}),
    'as-cast': perForm,
    machined: perForm,
    opened: perForm,
  }),
  outlines: z.object({ 'as-cast': outline, machined: outline, opened: outline }).prefault(noOutlines),
  bolts: z.array(bolt).max(60),
  variants: z.array(variant).max(60),
})

type Facts = z.output<typeof facts>

/** Figures that cannot both be true of one casting. */
function contradictions(casting: Facts, context: z.RefinementCtx): void {
  const { any } = casting.figures
  const above = (one: Figure | null, other: Figure | null) => one !== null && other !== null && one.value > other.value
  const refuse = (path: string[], message: string) =>
    context.addIssue({ code: 'custom', path: ['figures', ...path], message })

  if (above(any.thicknessLeastIn, any.thicknessNewIn))
    refuse(['any', 'thicknessLeastIn'], 'This is more than the new head has. Check both figures.')
  if (above(any.landLeastIn, any.landNewIn))
    refuse(['any', 'landLeastIn'], 'This is more than the new land has. Check both figures.')
  for (const kind of ['intakeRecession', 'exhaustRecession', 'injectorProtrusion'] as const) {
    if (above(any[`${kind}LeastIn`], any[`${kind}MostIn`]))
      refuse(['any', `${kind}LeastIn`], 'The minimum is more than the maximum. Check both figures.')
  }
  if (above(any.boltIn, any.boltHoleIn))
    refuse(['any', 'boltIn'], 'The bolt is thicker than its hole. Check both figures.')
  for (const form of chamberForms) {
    const share = centroidShareOf({
      openingCentreIn: casting.figures[form].openingCentreIn?.value,
      milledWidthIn: any.milledWidthIn?.value,
    })
    if (share !== null && !knownFacts({ share: shareFact(share) }).ok)
      refuse(
        [form, 'openingCentreIn'],
        share > 1
          ? 'This is outside the milled width. Check both figures.'
          : 'This is within 2 % of an edge of the deck. Check both figures.',
      )
    outlineContradictions(casting, form, context)
  }
}

/** How far a typed figure may be from the traced one: a digitiser's own error, and no more. */
const apart = 0.01

/** An outline that is none on this deck, or that another area or centre was typed beside. */
function outlineContradictions(casting: Facts, form: ChamberForm, context: z.RefinementCtx): void {
  const text = casting.outlines[form]
  if (text === '') return
  const refuse = (path: string[], message: string) => context.addIssue({ code: 'custom', path, message })
  const traced = tracedOpening(text, casting.figures.any.milledWidthIn?.value)
  if (!traced.ok) return refuse(['outlines', form], traced.refusal.message)
  const figures = {
    openingAreaIn2: traced.value.areaIn2,
    openingCentreIn: traced.value.centreIn,
  } as const
  for (const key of ['openingAreaIn2', 'openingCentreIn'] as const) {
    const typed = casting.figures[form][key]
    if (!typed || Math.abs(typed.value - figures[key]) <= apart * figures[key]) continue
    const said = `${typedFigure(typed)} was typed, and the outline gives ${formatFigure(figures[key], castingFigures[key].quantity)}`
    refuse(['figures', form, key], `${said}: more than 1 % apart. Leave this empty, or put one of the two right.`)
  }
}

const expected = { castingId: text(), version: z.number().int() }

export const addCastingSchema = facts.superRefine(contradictions)
export const changeCastingSchema = facts.extend(expected).superRefine(contradictions)
/** The owner's word on a cut behind a rate. */
export const ruleOnCutSchema = z.object({
  visitId: z.uuid(),
  ruling: z.enum(['count', 'leave-out']),
  reason: requiredText('Enter the reason.', 300),
})
export type RuleOnCut = z.output<typeof ruleOnCutSchema>

export const retireCastingSchema = z.object({ ...expected, retired: z.boolean() })

export type CastingForm = z.input<typeof addCastingSchema>
export type AddCasting = z.output<typeof addCastingSchema>
export type ChangeCasting = z.output<typeof changeCastingSchema>
export type RetireCasting = z.output<typeof retireCastingSchema>
