import { knownFacts } from '../known-facts'
import { ok, refuse, type Result } from '../errors'
import { factOf } from '../units/fact-of'
import { quantities } from '../units/quantities'
import { formatThou } from '../units/format-figure'
import { degrees, radians } from '../units/degrees'

type Width = number | null | undefined

const largestDeg = quantities.angle.most

/** What may differ between a depth and an angle that say the same: a mill is set to half a thou. */
const agreeIn = 0.0005

/**
 * The angle of a cut from its depth at the deep edge.
 *
 * @param angleIn angle part at the deep edge, zero at the shallow one, 0–0.5 in
 * @param milledWidthIn along the old deck, 1–20 in
 * @returns degrees, at most 5; refused as `missing` without the width
 *
 * φ = atan(w/W). Example: 0.12219 in over 7 in → 1.000°. (About 0.0175·W·degrees: Circle Track, Dec 2003.)
 * Derived: the right triangle of the width W and the edge depth w.
 */
export function cutAngleDeg(angleIn: number, milledWidthIn: Width): Result<number> {
  const facts = knownFacts({
    angleIn: factOf('angle part', angleIn, 'cutDepth'),
    milledWidthIn: factOf('milled width', milledWidthIn, 'milledWidth'),
  })
  if (!facts.ok) return facts
  const angleDeg = degrees(Math.atan(facts.value.angleIn / facts.value.milledWidthIn))
  if (angleDeg <= largestDeg + 1e-9) return ok(angleDeg)
  return refuse(
    'out-of-range',
    `${formatThou(angleIn)} over ${milledWidthIn} in is ${angleDeg.toFixed(2)}°: more than ${largestDeg}° is no deck cut.`,
  )
}

/**
 * Depth at the deep edge from the angle of a cut: the other way round, with the same ranges.
 *
 * w = W·tan φ. Example: 1° over 7 in → 0.12219 in.
 * Derived: the inverse of `cutAngleDeg`.
 */
export function edgeDepthIn(angleDeg: number, milledWidthIn: Width): Result<number> {
  const facts = knownFacts({
    angleDeg: factOf('angle', angleDeg, 'angle'),
    milledWidthIn: factOf('milled width', milledWidthIn, 'milledWidth'),
  })
  if (!facts.ok) return facts
  const angleIn = facts.value.milledWidthIn * Math.tan(radians(facts.value.angleDeg))
  const deepest = quantities.cutDepth.most
  if (angleIn <= deepest) return ok(angleIn)
  return refuse(
    'out-of-range',
    `${angleDeg}° over ${milledWidthIn} in is ${angleIn.toFixed(3)} in at the deep edge: more than ${deepest} in, not possible.`,
  )
}

/**
 * The angle part of a cut, however it was given: as a depth, in degrees, or both when they agree to half a thou.
 *
 * @param given depth 0–0.5 in, degrees 0–5, milled width 1–20 in (needed for degrees only)
 * @returns inches at the deep edge; null when neither was given; refused as `contradiction` when both differ
 * Derived: both are brought to the edge depth by w = W·tan φ. Example: 1° and 0.1222 in over 7 in → 0.1222 in.
 */
export function angleGivenIn(given: {
  readonly angleIn?: number | null
  readonly angleDeg?: number | null
  readonly milledWidthIn: Width
}): Result<number | null> {
  const { angleIn = null, angleDeg = null, milledWidthIn } = given
  const depth = knownFacts({ angleIn: factOf('angle part', angleIn ?? 0, 'cutDepth') })
  if (!depth.ok) return depth
  if (angleDeg === null) return ok(angleIn)
  const edge = edgeDepthIn(angleDeg, milledWidthIn)
  if (!edge.ok || angleIn === null) return edge
  if (Math.abs(edge.value - angleIn) <= agreeIn) return ok(angleIn)
  return refuse(
    'contradiction',
    `${angleDeg}° over ${milledWidthIn} in is ${formatThou(edge.value)} at the deep edge, not ${formatThou(angleIn)}: give one of them.`,
    { fields: { angleIn: `${formatThou(edge.value)} by the angle`, angleDeg: 'does not agree with the depth' } },
  )
}
