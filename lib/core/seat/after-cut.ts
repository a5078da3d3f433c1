import { motionOf, type DeckCut } from '../clearance/rigid-motion'
import { ok, type Result } from '../errors'
import { circleOver, placeCircle, shareBelow, type CircleName, type CircleOverDeck, type Seat } from './circles'

export type TopCutLoss = {
  /** Share of the top-cut circle that the new deck has taken, 0–1. */
  readonly lostShare: number
  readonly nearest: CircleOverDeck['nearest']
}

/**
 * How much of a seat's top cut a deck cut takes.
 *
 * @param cut of the deck; @param seat circles, gauge reading and valve angle (ranges: `placeCircle`)
 *
 * Share of the top-cut circle below the new deck, its heights taken with the valve's angle after the cut. In a wedge
 * chamber the nearest edge is often on the quench side, where an angle cut takes less than a flat one of the same volume.
 * Example: a flat cut to the circle's centre height loses half.
 * Derived: as `shareBelow`, for the top-cut circle.
 */
export function topCutLoss(cut: DeckCut, seat: Seat): Result<TopCutLoss> {
  const over = overNewDeck(cut, seat, 'top-cut')
  if (!over.ok) return over
  return ok({ lostShare: shareBelow(over.value), nearest: over.value.nearest })
}

export type InsertMarks = {
  readonly cutterMeetsInsert: boolean
  /** Share of the insert's outer edge that the cutter reaches, 0–1. */
  readonly share: number
  /** On which side; null when it does not. */
  readonly where: CircleOverDeck['nearest'] | null
}

/**
 * Whether and where the deck cutter meets the insert's outer edge. Ranges and assumptions as for `topCutLoss`.
 * Derived: as `shareBelow`, for the insert. Example: an insert whose rim stays 0.010 in above the new deck → no marks.
 */
export function insertMarks(cut: DeckCut, seat: Seat): Result<InsertMarks> {
  const over = overNewDeck(cut, seat, 'insert')
  if (!over.ok) return over
  const share = shareBelow(over.value)
  return ok({ cutterMeetsInsert: share > 0, share, where: share > 0 ? over.value.nearest : null })
}

export type SealingMargin = {
  /** Least height of the sealing line over the new deck, in inches. */
  readonly marginIn: number
  readonly nearest: CircleOverDeck['nearest']
  /** The margin must stay positive: else the head is held. */
  readonly hold: boolean
}

/**
 * What is left between the deck and the sealing line at its nearest point, in inches. Ranges and assumptions as for
 * `topCutLoss`. Example: gauged 0.100 to the sealing circle, flat cut 0.030 → 0.070.
 * Derived: as `circleOver`, for the sealing circle.
 */
export function sealingMargin(cut: DeckCut, seat: Seat): Result<SealingMargin> {
  const over = overNewDeck(cut, seat, 'sealing')
  if (!over.ok) return over
  const marginIn = over.value.leastIn
  return ok({ marginIn, nearest: over.value.nearest, hold: !(marginIn > 0) })
}

function overNewDeck(cut: DeckCut, seat: Seat, name: CircleName): Result<CircleOverDeck> {
  const motion = motionOf(cut)
  if (!motion.ok) return motion
  const circle = placeCircle(seat, name, motion.value.angleRad !== 0)
  if (!circle.ok) return circle
  return ok(circleOver(motion.value, circle.value))
}
