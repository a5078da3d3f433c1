import { together } from './compare'
import type { Comparison, Expected, ExpectedFacts, Figures } from './types'

type Lift = { readonly liftIn: number; readonly cfm: number }

/**
 * What a lift is expected to flow, in cfm (0–2000): held against the lift below, the line between its neighbours, and the
 * run before.
 *
 * @param point "intake@0.300"
 * @returns null when there is nothing to hold it against
 *
 * Derived: as `fromLiftBelow` and `lineAt`. Example: 168 at 0.300 and 190 at 0.500 → 179 at 0.400, low 143.2 (line),
 * high 214.8.
 */
export function expectedFlow(point: string, { here, runBefore, limits }: ExpectedFacts): Expected | null {
  const [port = '', liftText = ''] = point.split('@')
  const liftIn = Number(liftText)
  if (!(liftIn > 0)) return null
  const others = liftsOf(here, port).filter((lift) => Math.abs(lift.liftIn - liftIn) > 1e-9)
  const below = others.findLast((lift) => lift.liftIn < liftIn)
  const above = others.find((lift) => lift.liftIn > liftIn)
  const was = runBefore[point]
  return together([
    below && above ? part(lineAt(below, above, liftIn), limits.expectFlowLinePart, { code: 'lifts-beside' }) : null,
    was === undefined ? null : part(was, limits.expectFlowRunPart, { code: 'run-before' }),
    below
      ? { value: null, ...fromLiftBelow(below, liftIn, limits), why: { code: 'lift-below', liftIn: below.liftIn } }
      : null,
  ])
}

const part = (value: number, share: number, why: Comparison['why']): Comparison => ({
  value,
  low: value * (1 - share),
  high: value * (1 + share),
  why,
})

/** Lifts of one port that were flowed, lowest first. */
function liftsOf(figures: Figures, port: string): Lift[] {
  return Object.entries(figures)
    .flatMap(([key, cfm]) => {
      const [kind, point = ''] = key.split('|')
      const [of, lift] = point.split('@')
      return kind === 'flow' && of === port && lift !== undefined ? [{ liftIn: Number(lift), cfm }] : []
    })
    .sort((a, b) => a.liftIn - b.liftIn)
}

/**
 * Flow on the straight line between two lifts, in cfm.
 *
 * Derived: linear interpolation. Example: 168 at 0.3 in, 190 at 0.5 in → 179 at 0.4 in.
 */
export const lineAt = (below: Lift, above: Lift, liftIn: number): number =>
  below.cfm + ((above.cfm - below.cfm) * (liftIn - below.liftIn)) / (above.liftIn - below.liftIn)

/**
 * The span in which the next lift flows, by the one below, in cfm: air falls off a little at most, and gains no more than
 * the lift does.
 *
 * @returns no upper end while the lift below is under 0.1 in or flowed nothing
 *
 * 0.85·Q to 1.15·L₂/L₁·Q. Common practice. Example: 168 at 0.3 in → 142.8 to 257.6 at 0.4 in.
 */
export function fromLiftBelow(
  below: Lift,
  liftIn: number,
  limits: Pick<ExpectedFacts['limits'], 'expectFlowBelowPart' | 'expectFlowRisePart' | 'expectFlowRiseFromIn'>,
): { readonly low: number; readonly high: number | null } {
  const rises = below.liftIn > 0 && below.liftIn >= limits.expectFlowRiseFromIn - 1e-9 && below.cfm > 0
  return {
    low: limits.expectFlowBelowPart * below.cfm,
    high: rises ? (limits.expectFlowRisePart * below.cfm * liftIn) / below.liftIn : null,
  }
}
