import { quantities } from '../units/quantities'
import { cornerNames } from '../straightness/corners-fit'
import { together, within } from './compare'
import { cutHere } from './cut-here'
import { figureKey, type Comparison, type CutSince, type Expected, type ExpectedFacts } from './types'

/**
 * What a corner is expected to measure, in inches (0.3–12): on the plane of the other three, and not thicker nor thinner
 * than it was before, or new, less what was cut.
 *
 * @returns null when neither can be worked out
 *
 * Derived: as `fourthCorner` and the cut's depth at that edge.
 * Example: 4.500 new, nothing gone, the other three 4.500 → 4.500, low 4.490, high 4.503.
 */
export function expectedCorner(point: string, facts: ExpectedFacts): Expected | null {
  return together([ofPlane(point, facts), ofMetal(point, facts)])
}

/**
 * The fourth corner of a rectangle on the plane of the other three, in inches.
 *
 * @param beside the two corners next to it, @param opposite the one across from it
 *
 * z = a + b − c. Derived: both diagonals of a plane's rectangle have one middle. Example: 4.500, 4.480 beside, 4.482
 * opposite → 4.498.
 */
export const fourthCorner = (beside: readonly [number, number], opposite: number): number =>
  beside[0] + beside[1] - opposite

const otherOf = { intake: 'exhaust', exhaust: 'intake', '1': '2', '2': '1' } as const
type Edge = 'intake' | 'exhaust'
type End = '1' | '2'

function ofPlane(point: string, { here, limits }: ExpectedFacts): Comparison | null {
  const [edge, end] = point.split('-') as [Edge, End]
  const at = (e: Edge, n: End): number | undefined => here[figureKey('thickness', `${e}-${n}`)]
  if (!cornerNames.some((name) => name === point)) return null
  const [along, across, opposite] = [at(edge, otherOf[end]), at(otherOf[edge], end), at(otherOf[edge], otherOf[end])]
  if (along === undefined || across === undefined || opposite === undefined) return null
  return within(fourthCorner([along, across], opposite), limits.expectPlaneIn, { code: 'other-corners' })
}

/** At 'thickness' nothing is cut yet on this visit. */
function ofMetal(point: string, facts: ExpectedFacts): Comparison | null {
  const { limits, thickness, before, stepId } = facts
  const cut = stepId === 'thickness' ? uncut : cutHere(facts)
  const depthIn = cut && depthAtCorner(point.startsWith(facts.deepEdge), cut, facts)
  const beforeIn = stepId === 'thickness' ? undefined : before[figureKey('thickness', point)]
  const fromIn = beforeIn ?? (thickness.newIn === null ? null : thickness.newIn - (thickness.goneIn ?? 0))
  if (fromIn === null) return null
  const value = fromIn - (depthIn ?? 0)
  // Metal that went and that nobody knows of makes a head thinner, never thicker.
  const allKnown = depthIn !== null && (beforeIn !== undefined || thickness.goneIn !== null)
  return {
    value: allKnown ? value : null,
    low: allKnown ? value - limits.expectThinnerIn : null,
    high: value + limits.expectThickerIn,
    why: { code: beforeIn === undefined ? 'new-less-cut' : 'before-less-cut', before: fromIn, depthIn: fromIn - value },
  }
}

/**
 * Depth of a cut where a corner is touched, in inches; null: it leans, and nobody has said how far inside the edge.
 *
 * Derived: d(x) at x = inset, or W − inset. Example: 0.020 and 0.083 at the edges of 7 in, touched 0.7 in inside → 0.0767
 * at the deep edge.
 */
export function depthAtCorner(
  isDeep: boolean,
  { shallowIn, deepIn }: CutSince,
  { edgeInsetIn, milledWidthIn }: Pick<ExpectedFacts, 'edgeInsetIn' | 'milledWidthIn'>,
): number | null {
  if (Math.abs(deepIn - shallowIn) < 1e-9) return shallowIn
  if (edgeInsetIn === null || milledWidthIn === null || !(milledWidthIn >= quantities.milledWidth.least)) return null
  // Nobody touches a deck beside it.
  if (!(edgeInsetIn >= 0 && edgeInsetIn <= milledWidthIn)) return null
  const inside = ((deepIn - shallowIn) * edgeInsetIn) / milledWidthIn
  return isDeep ? deepIn - inside : shallowIn + inside
}

const uncut: CutSince = { shallowIn: 0, deepIn: 0 }
