import type { CastingFacts } from './figures'
import { placesAcross } from './turned-round'

/** Angles that are positive toward the deep edge. */
const leanToDeepEdge = ['intakeValveAngleDeg', 'exhaustValveAngleDeg'] as const

/**
 * A casting's figures counted from its other edge: as if the shallow edge were the deep one.
 *
 * @param casting milled width 1–20 in, places across in inches, valve angles in degrees
 * @returns null without the milled width; heights, diameters and depths stay
 *
 * x′ = W − x; θ′ = −θ. Derived: the same section seen from the other end of the head.
 * Example: width 7, valve at 3 leaning 23° → at 4 leaning −23°.
 */
export function fromOtherEdge(casting: CastingFacts): CastingFacts | null {
  const { milledWidthIn } = casting
  if (milledWidthIn === undefined) return null
  const places = placesAcross.flatMap((key) => {
    const xIn = casting[key]
    return xIn === undefined ? [] : [[key, milledWidthIn - xIn] as const]
  })
  const angles = leanToDeepEdge.flatMap((key) => {
    const angleDeg = casting[key]
    return angleDeg === undefined ? [] : [[key, -angleDeg] as const]
  })
  return { ...casting, ...Object.fromEntries([...places, ...angles]) }
}
