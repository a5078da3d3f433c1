import { z } from 'zod'
import {
  castingFigureKeys,
  castingFigures,
  chamberForms,
  type CastingFigureKey,
} from '@/lib/core/casting/figures'
import { neededWords, optionalFigure, words, type Figure } from './figure'
import { optionalAmount } from './money'

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

const bolt = z.object({
  label: neededWords('Name the bolt: "1", "front dowel side".', 60),
  xIn: optionalFigure('length'),
  yIn: optionalFigure('length'),
  diameterIn: optionalFigure('length'),
  boltIn: optionalFigure('length'),
  lengthIn: optionalFigure('length'),
  blind: z.boolean(),
  threadLeftIn: optionalFigure('length'),
})

const variant = z.object({
  /** '' for one that is new. */
  variantId: z.string(),
  name: neededWords('Name the variant.', 120),
  nominalCc: optionalFigure('chamberVolume'),
  supply: z.enum(['stock', 'special']),
  cutByMaker: z.boolean(),
  leadDays: z
    .string()
    .trim()
    .regex(/^\d{0,3}$/, 'Days, a whole number.')
    .transform((days) => (days === '' ? null : Number(days))),
  /** An amount as typed; how many decimals it may have is the shop's currency's to say. */
  cost: optionalAmount,
})

const facts = z.object({
  name: neededWords('Type the name the shop knows it by.', 120),
  material: neededWords('Type the material.', 60),
  chamberCount: z
    .string()
    .trim()
    .regex(/^([1-9]|1[0-2])$/, 'How many chambers: 1 to 12.')
    .transform(Number),
  chamberShape: z.enum(['open', 'closed'], 'Choose open or closed.'),
  deepEdge: z.enum(['exhaust', 'intake'], 'Choose the edge where an angle cut is deep.'),
  note: words(2000),
  figures: z.object({
    any: fieldsOf(sharedKeys).prefault({}),
    'as-cast': perForm,
    machined: perForm,
    opened: perForm,
  }),
  bolts: z.array(bolt).max(60),
  variants: z.array(variant).max(60),
})

type Facts = z.output<typeof facts>

/** Figures that cannot both be true of one casting. */
function contradictions(casting: Facts, context: z.RefinementCtx): void {
  const { any } = casting.figures
  const above = (one: Figure | null, other: Figure | null) =>
    one !== null && other !== null && one.value > other.value
  const refuse = (path: string[], message: string) =>
    context.addIssue({ code: 'custom', path: ['figures', ...path], message })

  if (above(any.thicknessLeastIn, any.thicknessNewIn))
    refuse(['any', 'thicknessLeastIn'], 'More than the head has when it is new.')
  if (above(any.landLeastIn, any.landNewIn))
    refuse(['any', 'landLeastIn'], 'More than the land has when it is new.')
  if (above(any.boltIn, any.boltHoleIn)) refuse(['any', 'boltIn'], 'Thicker than its hole.')
  for (const form of chamberForms) {
    if (above(casting.figures[form].openingCentreIn, any.milledWidthIn))
      refuse([form, 'openingCentreIn'], 'Outside the milled width.')
  }
}

const expected = { castingId: z.string(), version: z.number().int() }

export const addCastingSchema = facts.superRefine(contradictions)
export const changeCastingSchema = facts.extend(expected).superRefine(contradictions)
export const retireCastingSchema = z.object({ ...expected, retired: z.boolean() })

export type CastingForm = z.input<typeof addCastingSchema>
export type AddCasting = z.output<typeof addCastingSchema>
export type ChangeCasting = z.output<typeof changeCastingSchema>
export type RetireCasting = z.output<typeof retireCastingSchema>
