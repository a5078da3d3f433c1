import type { CornerInset } from './corner-inset'
import { cornerPoint, type CornerName } from './corner-point'
import { leanShiftIn } from './lean-shift'
import { leastSquaresPlane } from './least-squares-plane'
import { planeFit, type PlaneFit } from './plane-fit'
import { refuse, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { meanOrNull } from '../mean'
import { factOf } from '../units/fact-of'
import { degrees } from '../units/degrees'
import { quantities } from '../units/quantities'

export const cornerNames: readonly CornerName[] = ['intake-1', 'exhaust-1', 'intake-2', 'exhaust-2']

/** Thickness read at the corners; one that was not read is left out or null. */
export type Corners = Readonly<Partial<Record<CornerName, number | null>>>

type Read = { readonly kind: string; readonly point: string; readonly value: number | null }

/** The thicknesses among these readings, by corner, the last of each; values in inches. */
export const cornersOf = (readings: readonly Read[]): Readonly<Partial<Record<CornerName, number>>> =>
  Object.fromEntries(
    readings.flatMap(({ kind, point, value }) => (kind === 'thickness' && value !== null ? [[point, value]] : [])),
  )

export type Deck = {
  readonly deepEdge: 'intake' | 'exhaust'
  readonly milledWidthIn: number | null | undefined
  readonly deckLengthIn: number | null | undefined
  /** Where the corners are touched; null: nobody has said. */
  readonly inset: CornerInset | null
}

/** A corner touched past the middle is on the other side. */
const insideDeck = ({ milledWidthIn, deckLengthIn }: Deck, { edgeIn, endIn }: CornerInset): boolean =>
  2 * edgeIn < (milledWidthIn ?? Infinity) && 2 * endIn < (deckLengthIn ?? Infinity)

/**
 * Where the corners of this deck are touched, in inches, held to 0–3 in and to this side of the middle of the deck; or why
 * nothing can be said of them.
 *
 * By definition: the deck's own inset. Example: nobody has said → refused, needs `cornerInset`.
 */
export function insetOf(deck: Deck): Result<CornerInset> {
  if (deck.inset === null) {
    const said = 'Needs how far inside the edges of the deck the corners are touched.'
    return refuse('missing', said, { needs: ['cornerInset'] })
  }
  const inset = knownFacts({
    edgeIn: factOf('corners touched, inside the edges', deck.inset.edgeIn, 'cornerInset'),
    endIn: factOf('corners touched, inside the ends', deck.inset.endIn, 'cornerInset'),
  })
  if (!inset.ok || insideDeck(deck, inset.value)) return inset
  return refuse('contradiction', 'The corners cannot be touched past the middle of the deck. Check the inset.')
}

/** What the corners say of a cut, and what a head that leaned before it adds to the flat part: shown, not taken off. */
export type CornersFit = PlaneFit & { readonly leanShiftIn: number | null }

/**
 * What the cuts between two rounds of the four corners took, in inches: `planeFit` with the corners where they were
 * touched, the second round gauged on the new deck.
 *
 * @param before, after thickness 0.3–12 in; refused when fewer than three corners have both, the deck's size is unknown,
 *   or nobody has said how far inside the edges the corners are touched
 *
 * Derived: as `planeFit`. Example: all four 4.500 before and 4.480 after → flat 0.020, angle part 0.
 */
export function cornersFit(deck: Deck, before: Corners, after: Corners): Result<CornersFit> {
  const inset = insetOf(deck)
  if (!inset.ok) return inset
  const size = { milledWidthIn: deck.milledWidthIn ?? 0, deckLengthIn: deck.deckLengthIn ?? 0 }
  const places = cornerNames.map((corner) => ({
    name: corner,
    ...cornerPoint(corner, { deepEdge: deck.deepEdge, ...size }, inset.value),
    beforeIn: before[corner],
    afterIn: after[corner],
  }))
  const fit = planeFit({
    points: places,
    milledWidthIn: deck.milledWidthIn,
    deckLengthIn: deck.deckLengthIn,
    gaugedSquareTo: 'new-deck',
  })
  return fit.ok ? { ok: true, value: { ...fit.value, leanShiftIn: shiftOf(places, fit.value) } } : fit
}

/** By how much the deck leaned to the top face before the cut: the slope of the first round. */
function shiftOf(
  places: readonly { xIn: number; yIn: number; beforeIn: number | null | undefined }[],
  { angleDeg }: PlaneFit,
): number | null {
  const read = places.flatMap(({ xIn, yIn, beforeIn }): [number, number, number][] =>
    typeof beforeIn === 'number' ? [[xIn, yIn, beforeIn]] : [],
  )
  const plane = leastSquaresPlane(read)
  if (plane === null) return null
  // The head gets thinner toward the deep edge where an earlier cut leaned the same way.
  const leanDeg = degrees(Math.atan(-plane.perX))
  const shift = leanShiftIn(meanOrNull(read.map(([, , thicknessIn]) => thicknessIn)), leanDeg, angleDeg)
  return shift.ok ? shift.value : null
}

/** Depth at both edges, in inches. */
export type EdgeDepths = { readonly shallowIn: number; readonly deepIn: number }

/**
 * The same at both edges: by the plane; without the deck's size by what the corners of each edge lost, mean of the two.
 *
 * @returns null when an edge has no corner that was read both times
 *
 * Without the deck's size, or the place where the corners are touched, the tilt of the new deck is left out (at 0.5° and
 * 4.5 in that reads 0.17 thou too deep), and the figures are those of the corners, not of the edges.
 * Derived: flat part, and flat plus angle part, of `cornersFit`. Example: all four 0.020 less → 0.020 at both edges.
 */
export function edgesCut(deck: Deck, before: Corners, after: Corners): EdgeDepths | null {
  const fit = cornersFit(deck, before, after)
  if (fit.ok) return { shallowIn: fit.value.flatIn, deepIn: fit.value.flatIn + fit.value.angleIn }
  const intakeIn = lostAt('intake', before, after)
  const exhaustIn = lostAt('exhaust', before, after)
  if (intakeIn === null || exhaustIn === null) return null
  return deck.deepEdge === 'exhaust'
    ? { shallowIn: intakeIn, deepIn: exhaustIn }
    : { shallowIn: exhaustIn, deepIn: intakeIn }
}

/** Read, and as thick as a head can be. */
const isThickness = (valueIn: number | null | undefined): valueIn is number =>
  typeof valueIn === 'number' && valueIn >= quantities.thickness.least && valueIn <= quantities.thickness.most

function lostAt(edge: 'intake' | 'exhaust', before: Corners, after: Corners): number | null {
  const lost = ([`${edge}-1`, `${edge}-2`] as const).flatMap((corner) => {
    const [from, to] = [before[corner], after[corner]]
    return isThickness(from) && isThickness(to) ? [from - to] : []
  })
  return meanOrNull(lost)
}
