import type { Question } from '@/lib/core/expected/questions'
import type { Stop } from '@/lib/core/expected/stops'
import type { Expected, HeldAgainst } from '@/lib/core/expected/types'
import { pointLabel } from '@/lib/core/readings/points'
import { readingSpecs } from '@/lib/core/readings/specs'
import type { ReadingKind } from '@/lib/core/readings/types'
import { formatBare, formatFigure, formatThou } from '@/lib/core/units/format-figure'
import { quantities, type Quantity } from '@/lib/core/units/quantities'

/** "the other chambers": what a reading is held against. */
export function heldAgainstWords(why: HeldAgainst): string {
  switch (why.code) {
    case 'before-less-cut':
      return `before, less ${formatThou(why.depthIn)} cut`
    case 'before-and-cut':
      return `before, and ${formatThou(why.depthIn)} cut`
    case 'new-less-cut':
      return why.depthIn === 0 ? 'the new thickness' : `the new thickness, less ${formatThou(why.depthIn)} cut`
    case 'earlier-visit':
      return `the ${formatFigure(why.goneIn, 'removed')} gone when it left here on job ${why.job}`
    case 'lift-below':
      return `the flow at ${why.liftIn.toFixed(3)} in`
    default:
      return plainWords[why.code]
  }
}

const plainWords: Readonly<
  Record<
    Exclude<
      HeldAgainst['code'],
      'before-less-cut' | 'before-and-cut' | 'new-less-cut' | 'lift-below' | 'earlier-visit'
    >,
    string
  >
> = {
  before: 'before, nothing cut since',
  'other-chambers': 'the other chambers',
  mate: 'the mate',
  'nominal-less-gone': 'the nominal volume less what is cut',
  'other-corners': 'the other three corners',
  'record-less-gone': 'the casting record less what is cut',
  'other-valves': 'the other valves',
  'other-injectors': 'the other injectors',
  'advised-stop': 'the advised stop',
  plan: 'the plan',
  'thickness-left': 'the metal left',
  'last-total': 'the last total depth',
  limit: 'the limit',
  'lifts-beside': 'the lifts beside it',
  'run-before': 'the run before',
  wanted: 'the wanted figure',
}

type Span = Pick<Expected, 'value' | 'low' | 'high'>

/** Depths at the mill are said in thou; the others in the unit asked for, else their own. */
const unitOf = (quantity: Quantity, unit: string): string =>
  unit !== '' ? unit : quantity === 'cutDepth' ? 'thou' : quantities[quantity].unit

/** "62.4 to 65.4 cc", "at most 0.0200 in". */
function spanWords({ low, high }: Pick<Span, 'low' | 'high'>, quantity: Quantity, unit: string): string {
  const say = (value: number) => formatFigure(value, quantity, unit)
  if (low === null) return high === null ? '' : `at most ${say(high)}`
  return high === null ? `at least ${say(low)}` : `${formatBare(low, quantity, unit)} to ${say(high)}`
}

/**
 * What stands beside a cell: "63.9 ± 1.5 cc, the other chambers"; a span where the room is not alike on both sides.
 * `unit`: the one that the cell shows.
 */
export function expectedWords(expected: Expected, quantity: Quantity, unit: string): string {
  const { value, low, high, why, lowWhy, highWhy } = expected
  // Two comparisons that no figure can agree with: each is said with whose it is.
  if (low !== null && high !== null && low > high) {
    const most = `${spanWords({ low: null, high }, quantity, unit)}, ${heldAgainstWords(highWhy)}`
    return `${most}; ${spanWords({ low, high: null }, quantity, unit)}, ${heldAgainstWords(lowWhy)}`
  }
  const even = value !== null && low !== null && high !== null && Math.abs(high - value - (value - low)) < 1e-9
  if (!even) return `${spanWords(expected, quantity, unit)}, ${heldAgainstWords(why)}`
  const [middle, room] = [formatFigure(value, quantity, unit), formatFigure(high - value, quantity, unit)]
  const bare = middle.endsWith(` ${unit}`) ? middle.slice(0, -unit.length - 1) : middle
  return `${bare} ± ${room}, ${heldAgainstWords(why)}`
}

/** Why a figure is unlikely; what to do about it is said by whoever asks. */
export function unlikelyWords({ kind, value, side, expected, oneOf }: Question, unit?: string): string {
  const quantity = readingSpecs[kind].quantity ?? 'depth'
  const shown = unitOf(quantity, unit ?? '')
  const figure = formatFigure(value, quantity, shown)
  const held = heldAgainstWords(side === 'low' ? expected.lowWhy : expected.highWhy)
  const span = spanWords(expected, quantity, shown)
  const stop = kind === 'cut-depth' && side === 'high' ? 'Stop: ' : ''
  const sentence = `${figure} is unlikely: ${span} expected, by ${held}.`
  if (oneOf.length < 2) return `${stop}${sentence}`
  return `${sentence} It can be any one of these ${oneOf.length}: ${oneOf.map(pointLabel).join(', ')}.`
}

/** What is said where it is refused: "… Type it again to keep it." */
export const questionWords = (question: Question, unit?: string): string =>
  `${unlikelyWords(question, unit)} Type it again to keep it.`

const inches = (value: number) => formatFigure(value, 'thickness')
const liftWords = (liftIn: number | null): string =>
  liftIn === null ? 'any lift (the valve lift is not known)' : `a lift of ${formatFigure(liftIn, 'lift')}`

/** Why readings cannot all be true, and what to do. */
export function stopWords(stop: Stop): string {
  const todo = 'Check and fix it, or put the head on hold.'
  switch (stop.code) {
    case 'retainer-under-lift':
      return `${inches(stop.clearanceIn)} from retainer to seal is too little for ${liftWords(stop.liftIn)} and ${inches(stop.marginIn)} to spare. ${todo}`
    case 'coil-bind-under-lift':
      return `Installed ${inches(stop.installedIn)} less ${inches(stop.coilBindIn)} at coil bind is too little for ${liftWords(stop.liftIn)} and ${inches(stop.marginIn)} to spare. ${todo}`
    case 'thicker-after-cut':
      return `${inches(stop.nowIn)} is thicker than the ${inches(stop.beforeIn)} before the cut. One of the two is wrong. ${todo}`
    case 'seat-deeper':
      return `${inches(stop.nowIn)} is deeper than the ${inches(stop.beforeIn)} before the cut, and no seat work was done. ${todo}`
    case 'leak-over-flow':
      return `${formatFigure(stop.flowCfm, 'flow')} is less than the leak of ${formatFigure(stop.leakCfm, 'flow')}. ${todo}`
  }
}

type Confirmed = Pick<Span, 'low' | 'high'> & { readonly why: HeldAgainst }

/** Beside a reading that was kept though unlikely: "confirmed; 62.4 to 65.4 cc expected, by the other chambers". */
export function confirmedWords(kind: ReadingKind, held: Confirmed | null): string {
  const { quantity } = readingSpecs[kind]
  if (held === null || !quantity) return 'confirmed'
  return `confirmed; ${spanWords(held, quantity, unitOf(quantity, ''))} expected, by ${heldAgainstWords(held.why)}`
}
