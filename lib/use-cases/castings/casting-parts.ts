import { appliesTo } from '@/lib/core/casting/chamber-shape'
import { castingFigureKeys, chamberForms, type CastingFigureKey } from '@/lib/core/casting/figures'
import { RefusedError } from '@/lib/core/errors'
import { parseAmount, type AmountManner } from '@/lib/core/money/amount'
import { typedFigure } from '@/lib/core/units/typed-figure'
import {
  byLabel,
  type BoltRow,
  type CastingFacts,
  type CastingParts,
  type FigureRow,
  type OutlineRow,
  type VariantRow,
} from '@/lib/data/castings'
import { figureForms, type AddCasting } from '@/lib/schemas/casting'
import type { Figure } from '@/lib/schemas/figure'

export const factsOf = (input: AddCasting): CastingFacts => ({
  name: input.name,
  material: input.material,
  chamberCount: input.chamberCount,
  chamberShape: input.chamberShape,
  deepEdge: input.deepEdge,
  note: input.note,
})

const valueOf = (figure: Figure | null): number | null => figure?.value ?? null

/** What the form says, as rows. `manner`: how the shop writes money. */
export const partsOf = (input: AddCasting, manner: AmountManner): CastingParts => ({
  figures: figureRows(input),
  outlines: chamberForms.flatMap((form) => {
    const points = input.chamberShape === 'flat-deck' ? '' : input.outlines[form]
    return points === '' ? [] : [{ form, points }]
  }),
  bolts: input.bolts.map((bolt) => ({
    label: bolt.label,
    xIn: valueOf(bolt.xIn),
    yIn: valueOf(bolt.yIn),
    diameterIn: valueOf(bolt.diameterIn),
    boltIn: valueOf(bolt.boltIn),
    lengthIn: valueOf(bolt.lengthIn),
    blind: bolt.blind,
    threadLeftIn: valueOf(bolt.threadLeftIn),
  })),
  variants: input.variants.map((variant, place) => variantRow(variant, place, manner)),
})

/** The figures that were given and that such a head has, one row each. */
function figureRows({ figures, chamberShape }: AddCasting): FigureRow[] {
  return figureForms.flatMap((form) => {
    const given: Partial<Record<CastingFigureKey, Figure | null>> = figures[form]
    return castingFigureKeys.flatMap((key) => {
      const figure = given[key]
      return figure && appliesTo(chamberShape, key) ? [{ form, key, ...figure }] : []
    })
  })
}

function variantRow(
  { variantId, nominalCc, cost, ...rest }: AddCasting['variants'][number],
  place: number,
  manner: AmountManner,
): VariantRow {
  return {
    ...rest,
    id: variantId === '' ? null : variantId,
    nominalCc: valueOf(nominalCc),
    nominalText: nominalCc?.text ?? '',
    costMinor: cost === '' ? null : costMinor(cost, place, manner),
  }
}

function costMinor(cost: string, place: number, manner: AmountManner): number {
  const amount = parseAmount(cost, manner)
  if (amount.ok) return amount.value
  const { message } = amount.refusal
  throw new RefusedError({ code: 'invalid', message, fields: { [`variants.${place}.cost`]: message } })
}

/** One flat list of what stands on record, to be compared line by line for the trail. */
export function flatCasting(facts: CastingFacts, parts: CastingParts): Record<string, unknown> {
  const { name, material, chamberCount, chamberShape, deepEdge, note } = facts
  const own = { name, material, chamberCount, chamberShape, deepEdge, note }
  const bolts = parts.bolts.toSorted(byLabel).map(flatBolt)
  const variants = parts.variants.map(flatVariant).toSorted((a, b) => (a.name < b.name ? -1 : 1))
  return { ...own, ...flatFigures(parts.figures), ...flatOutlines(parts.outlines), bolts, variants }
}

function flatBolt({ label, xIn, yIn, diameterIn, boltIn, lengthIn, blind, threadLeftIn }: BoltRow) {
  return { label, xIn, yIn, diameterIn, boltIn, lengthIn, blind, threadLeftIn }
}

function flatVariant({ name, nominalText, supply, cutByMaker, leadDays, costMinor }: VariantRow) {
  return { name, nominalText, supply, cutByMaker, leadDays, costMinor }
}

/** Every figure has its line, '' when it is not known, so that one taken away shows in the trail too. */
function flatFigures(rows: readonly FigureRow[]): Record<string, string> {
  const empty = figureForms.flatMap((form) => castingFigureKeys.map((key) => [`${form}.${key}`, ''] as const))
  const known = rows.map((row) => [`${row.form}.${row.key}`, typedFigure(row)] as const)
  return Object.fromEntries([...empty, ...known])
}

const flatOutlines = (rows: readonly OutlineRow[]): Record<string, string> =>
  Object.fromEntries(
    chamberForms.map((form) => [`${form}.outline`, rows.find((row) => row.form === form)?.points ?? '']),
  )
