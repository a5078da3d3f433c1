import { together } from './compare'
import type { Comparison, Expected, ExpectedFacts, HeldAgainst } from './types'

/**
 * What the total depth from touch-off is expected to be at the mill, in inches (0–0.5): no deeper than the advised stop,
 * the plan, or the metal left, the least of them; no less than the last total, nor than a tenth of the advice.
 *
 * @returns null when nothing is advised, planned or known
 *
 * Derived: the least of the three, with the shop's room over it. Example: advised 0.0213, plan 0.030 → to 0.0233, from
 * 0.00213.
 */
export function expectedMillDepth({ mill, millDepthIn, limits }: ExpectedFacts): Expected | null {
  const countedIn = mill.touchedOffAnew ? millDepthIn : 0
  const stops = [
    [mill.adviceIn, 'advised-stop'],
    [mill.planFlatIn, 'plan'],
    [mill.leftIn, 'thickness-left'],
  ] as const
  const least = stops
    .flatMap(([stopIn, code]) => (stopIn === null ? [] : [{ stopIn: Math.max(0, stopIn - countedIn), code }]))
    .toSorted((a, b) => a.stopIn - b.stopIn)[0]
  return together([
    least ? ofStop(least.stopIn, limits.expectDepthLeastPart, limits.expectDepthOverIn, { code: least.code }) : null,
    mill.lastTotalIn === null || mill.touchedOffAnew
      ? null
      : { value: null, low: mill.lastTotalIn, high: null, why: { code: 'last-total' } },
  ])
}

/**
 * What the depth at one edge of an angle cut is expected to be, in inches: the plan's angle part at the deep edge, nothing
 * at the other.
 *
 * @returns null without a plan
 *
 * Derived: the plan's parts. Example: plan 0.063 at the exhaust edge → exhaust 0.063, to 0.065; intake 0, to 0.002.
 */
export function expectedEdgeDepth(point: string, { mill, limits, deepEdge }: ExpectedFacts): Expected | null {
  if (mill.planAngleIn === null) return null
  const wantedIn = point === deepEdge ? mill.planAngleIn : 0
  return together([ofStop(wantedIn, limits.expectDepthLeastPart, limits.expectDepthOverIn, { code: 'plan' })])
}

const ofStop = (stopIn: number, leastPart: number, overIn: number, why: HeldAgainst): Comparison => ({
  value: stopIn,
  low: stopIn * leastPart,
  high: stopIn + overIn,
  why,
})
