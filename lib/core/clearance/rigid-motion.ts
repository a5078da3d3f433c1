import { ok, refuse, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { radians } from '../units/degrees'
import { quantities } from '../units/quantities'

/**
 * A point of the head in its section frame: x across from the shallow edge of the cut toward the deep one, z up into
 * the head from the deck as it was before the cut.
 */
export type SectionPoint = { readonly xIn: number; readonly zIn: number }

/** A cut of the deck: a flat part everywhere, and an angle part that is zero at the shallow edge. */
export type DeckCut = {
  readonly flatIn: number
  /** At the deep edge. */
  readonly angleIn: number
  /** Needed when there is an angle part. */
  readonly milledWidthIn: number | null | undefined
}

/** A cut that has been looked at: its angle and its slope across are known. */
export type Motion = { readonly flatIn: number; readonly slope: number; readonly angleRad: number }

/**
 * What a cut does to the place of the head on its block, before any point of it is asked for.
 *
 * @param cut flat part 0–0.5 in, angle part 0–0.5 in at the deep edge, milled width 1–20 in; angle at most 5°
 *
 * φ = atan(angle part / milled width). A negative flat part is refused: the cut would run out short of the edge and
 * leave a ridge. Example: angle part 0.1222 in over 7 in → 1°.
 * Derived: the right triangle of angle part and milled width.
 */
export function motionOf(cut: DeckCut): Result<Motion> {
  const flat = knownFacts({
    flatIn: factOf('flat part', cut.flatIn, 'cutDepth'),
    angleIn: factOf('angle part', cut.angleIn, 'cutDepth'),
  })
  if (!flat.ok) return flat
  if (cut.angleIn === 0) return ok({ flatIn: cut.flatIn, slope: 0, angleRad: 0 })
  const width = knownFacts({ milledWidthIn: factOf('milled width', cut.milledWidthIn, 'milledWidth') })
  if (!width.ok) return width
  const slope = cut.angleIn / width.value.milledWidthIn
  if (slope > Math.tan(radians(quantities.angle.most)) + 1e-12) {
    return refuse(
      'out-of-range',
      `${cut.angleIn} in over ${width.value.milledWidthIn} in is more than ${quantities.angle.most}°.`,
    )
  }
  return ok({ flatIn: cut.flatIn, slope, angleRad: Math.atan(slope) })
}

/**
 * Height of a point over the new deck, square to it, in inches: h' = (z − d(x_d))·cos φ − (x − x_d)·sin φ with
 * d(x) = f + x·tan φ, which is the same for every x_d, hence taken at x_d = 0.
 * Example: 1° and 0.020 flat, a point at (3, 1) → 0.9275 in.
 * Derived: distance of a point from the plane of the new deck.
 */
export function heightOver(motion: Motion, point: SectionPoint): number {
  return (point.zIn - motion.flatIn) * Math.cos(motion.angleRad) - point.xIn * Math.sin(motion.angleRad)
}

/**
 * Where a point of the head stands after the cut, seen from the block, in inches.
 *
 * @param dowelXIn mouth of the dowel holes from the shallow edge: they hold the head sideways
 *
 * p' = (x_d, 0) + R·(p − (x_d, d(x_d))), R = [[cos φ, sin φ], [−sin φ, cos φ]]: a point high up moves toward the deep
 * edge by about z·sin φ. Example: 1°, no flat part, dowels at x = 0: (0, 4) → (0.0698, 3.9994).
 * Derived: rotation about the mouth of the dowel holes.
 */
export function movedPoint(motion: Motion, dowelXIn: number, point: SectionPoint): SectionPoint {
  const { flatIn, slope, angleRad } = motion
  const up = point.zIn - flatIn - dowelXIn * slope
  const across = point.xIn - dowelXIn
  return {
    xIn: dowelXIn + across * Math.cos(angleRad) + up * Math.sin(angleRad),
    zIn: heightOver(motion, point),
  }
}

/**
 * How far a point comes down along the bore and sideways toward the deep edge, in inches.
 *
 * @param dowelXIn needed for the sideways part of an angle cut only; a flat cut moves nothing sideways
 *
 * Example: a flat cut of 0.030 → down 0.030, sideways 0.
 * Derived: the point before less the point after `movedPoint`.
 */
export function moveOf(
  motion: Motion,
  point: SectionPoint,
  dowelXIn: number | null | undefined,
): { readonly downIn: number; readonly towardDeepIn: number | null } {
  const downIn = point.zIn - heightOver(motion, point)
  if (motion.angleRad === 0) return { downIn: motion.flatIn, towardDeepIn: 0 }
  if (dowelXIn === null || dowelXIn === undefined) return { downIn, towardDeepIn: null }
  return { downIn, towardDeepIn: movedPoint(motion, dowelXIn, point).xIn - point.xIn }
}
