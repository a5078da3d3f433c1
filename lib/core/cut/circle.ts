import { ok, refuse, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import type { Opening, OutlinePoint } from './outline'

/**
 * A round opening: area in in² and its centre.
 *
 * @param diameterIn 0.8–7.1 in, whose area is 0.5–40 in²
 * @param centreIn from the shallow edge; the circle must lie on the deck, 0 to the milled width (1–20 in)
 *
 * Example: 3.600 in at 3.500 of 7 → 10.179 in².
 * Derived: π/4·D².
 */
export function circleOpening(diameterIn: number, centreIn: number, milledWidthIn: number): Result<Opening> {
  const facts = knownFacts({
    diameterIn: ['diameter of the opening', diameterIn, 0.8, 7.1],
    milledWidthIn: factOf('milled width', milledWidthIn, 'milledWidth'),
    centreIn: ['centre of the opening', centreIn, 0, milledWidthIn],
  })
  if (!facts.ok) return facts
  const radiusIn = diameterIn / 2
  if (centreIn < radiusIn || centreIn + radiusIn > milledWidthIn)
    return refuse('out-of-range', `A circle of ${diameterIn} in at ${centreIn} in does not lie on the deck.`)
  return ok({ areaIn2: Math.PI * radiusIn ** 2, centreIn })
}

const cornersOfCircle = 180

/**
 * An outline for an opening of which only area and centre are known: the circle of that area, as a polygon that has it
 * exactly. For what depends on the shape only weakly, such as wall draft.
 * Derived: a regular polygon of n corners has the area n/2·r²·sin(2π/n). Example: 10 in² → 180 corners at 1.7843 in.
 */
export function circleOutline({ areaIn2, centreIn }: Opening): readonly OutlinePoint[] {
  const step = (2 * Math.PI) / cornersOfCircle
  const radiusIn = Math.sqrt((2 * areaIn2) / (cornersOfCircle * Math.sin(step)))
  return Array.from({ length: cornersOfCircle }, (_, at) => ({
    xIn: centreIn + radiusIn * Math.cos(at * step),
    yIn: radiusIn * Math.sin(at * step),
  }))
}
