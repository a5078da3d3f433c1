import { cornerPoint, type CornerName } from './corner-point'
import { planeFit, type PlaneFit } from './plane-fit'
import type { Result } from '../errors'
import { meanOrNull } from '../mean'

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
}

/**
 * What the cuts between two rounds of the four corners took, in inches: `planeFit` with the corners in their places,
 * the second round gauged on the new deck.
 *
 * @param before, after thickness 0.3–12 in; refused when fewer than three corners have both, or the deck's size is unknown
 * Derived: as `planeFit`. Example: all four 4.500 before and 4.480 after → flat 0.020, angle part 0.
 */
export function cornersFit(deck: Deck, before: Corners, after: Corners): Result<PlaneFit> {
  const size = { milledWidthIn: deck.milledWidthIn ?? 0, deckLengthIn: deck.deckLengthIn ?? 0 }
  return planeFit({
    points: cornerNames.map((corner) => ({
      name: corner,
      ...cornerPoint(corner, { deepEdge: deck.deepEdge, ...size }),
      beforeIn: before[corner],
      afterIn: after[corner],
    })),
    milledWidthIn: deck.milledWidthIn,
    deckLengthIn: deck.deckLengthIn,
    gaugedSquareTo: 'new-deck',
  })
}

/** Depth at both edges, in inches. */
export type EdgeDepths = { readonly shallowIn: number; readonly deepIn: number }

/**
 * The same at both edges: by the plane; without the deck's size by what the corners of each edge lost, mean of the two.
 *
 * @returns null when an edge has no corner that was read both times
 *
 * Without the deck's size the tilt of the new deck is left out: at 0.5° and 4.5 in that reads 0.17 thou too deep.
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

function lostAt(edge: 'intake' | 'exhaust', before: Corners, after: Corners): number | null {
  const lost = ([`${edge}-1`, `${edge}-2`] as const).flatMap((corner) => {
    const [from, to] = [before[corner], after[corner]]
    return from === undefined || from === null || to === undefined || to === null ? [] : [from - to]
  })
  return meanOrNull(lost)
}
