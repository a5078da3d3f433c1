import type { z } from 'zod'
import { chamberShapeOf } from '@/lib/core/casting/chamber-shape'
import type { ChamberForm } from '@/lib/core/casting/figures'
import { formatAmount } from '@/lib/core/money/amount'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import type { changeCastingSchema, FigureForm } from '@/lib/schemas/casting'
import type { CastingSeen } from '@/lib/use-cases/castings/see-castings'

export type CastingValues = z.input<typeof changeCastingSchema>
export type CastingForm = ActionForm<CastingValues, { castingId: string }>

/** A blank form: nothing is guessed but the edge that is nearly always the deep one. */
export const blank: CastingValues = {
  castingId: '',
  version: 0,
  name: '',
  material: '',
  chamberCount: '',
  chamberShape: '' as 'open', // no choice made yet: the schema asks for one
  deepEdge: 'exhaust',
  note: '',
  figures: { any: {}, 'as-cast': {}, machined: {}, opened: {} },
  outlines: { 'as-cast': '', machined: '', opened: '' },
  bolts: [],
  variants: [],
}

/** What stands on record, as the form shows it. `exponent`: decimals of the shop's currency. */
export function valuesOf(casting: CastingSeen, exponent: number): CastingValues {
  const textsOf = (form: FigureForm): Record<string, string> =>
    Object.fromEntries(
      casting.figures.filter((figure) => figure.form === form).map((figure) => [figure.key, figure.text]),
    )
  const outlineOf = (form: ChamberForm): string =>
    casting.outlines.find((outline) => outline.form === form)?.points ?? ''
  return {
    castingId: casting.id,
    version: casting.version,
    name: casting.name,
    material: casting.material,
    chamberCount: String(casting.chamberCount),
    chamberShape: chamberShapeOf(casting.chamberShape),
    deepEdge: casting.deepEdge === 'intake' ? 'intake' : 'exhaust',
    note: casting.note,
    figures: {
      any: textsOf('any'),
      'as-cast': textsOf('as-cast'),
      machined: textsOf('machined'),
      opened: textsOf('opened'),
    },
    outlines: {
      'as-cast': outlineOf('as-cast'),
      machined: outlineOf('machined'),
      opened: outlineOf('opened'),
    },
    bolts: casting.bolts.map(({ label, blind, ...figures }) => ({ label, blind, ...boltTexts(figures) })),
    variants: casting.variants.map(({ nominalText, supply, leadDays, costMinor, ...rest }) => ({
      ...rest,
      nominalCc: nominalText,
      supply: supply === 'special' ? 'special' : 'stock',
      leadDays: leadDays === null ? '' : String(leadDays),
      cost: costMinor === null ? '' : formatAmount(costMinor, exponent),
    })),
  }
}

type BoltNumbers = Omit<CastingSeen['bolts'][number], 'label' | 'blind'>
type BoltTexts = Record<keyof BoltNumbers, string>

const boltTexts = (figures: BoltNumbers): BoltTexts => ({
  xIn: textOf(figures.xIn),
  yIn: textOf(figures.yIn),
  diameterIn: textOf(figures.diameterIn),
  boltIn: textOf(figures.boltIn),
  lengthIn: textOf(figures.lengthIn),
  threadLeftIn: textOf(figures.threadLeftIn),
})

const textOf = (value: number | null): string => (value === null ? '' : String(value))
