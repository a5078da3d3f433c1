import { motionOf, type DeckCut } from '../clearance/rigid-motion'
import { ok, type Result } from '../errors'
import { knownFacts } from '../known-facts'

/**
 * How deep a cut goes at one place across the deck, in inches, square to the old deck.
 *
 * @param cut flat part and angle part 0–0.5 in, milled width 1–20 in (needed for an angle cut only), at most 5°
 * @param xIn from the shallow edge, 0 to the milled width
 *
 * d(x) = f + w·x/W. Example: 0.020 flat, 0.063 at the edge of 7 in: 0.060 at 4.445.
 * Derived: the straight line from f at the shallow edge to f + w at the deep one.
 */
export function depthAt(cut: DeckCut, xIn: number): Result<number> {
  const motion = motionOf(cut)
  if (!motion.ok) return motion
  const place = knownFacts({ xIn: ['place across the deck', xIn, 0, cut.milledWidthIn ?? 20] })
  return place.ok ? ok(motion.value.flatIn + motion.value.slope * place.value.xIn) : place
}
