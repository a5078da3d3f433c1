import type { SecondCheckNeed } from './codes'
import { sameKey } from './keys'
import { flatLeftIn } from './outside-cuts'
import type { RouteFacts } from './types'
import type { StepKey } from './step-ids'

/** Decimals are not exact in binary. */
const rounding = 1e-9

/**
 * Whether a deck cut of this step must be looked at by another person before its first pass.
 *
 * @param facts depths 0–0.5 in; a setting of 0 asks for no second check
 * @returns how deep the step is planned, and from what depth on the shop asks; null: not asked, done under the newest plan,
 *   or the first pass was made
 *
 * By definition: planned deeper than the setting, no second check since the newest plan, no depth read. Example: 0.025 flat,
 * set at 0.020 → 0.025 and 0.020; checked, then a new plan → asked again.
 */
export function secondCheckNeeded(facts: RouteFacts, step: StepKey): SecondCheckNeed | null {
  const deeperThanIn = facts.settings.secondCheckDeeperThanIn
  const depthIn = plannedIn(facts, step)
  if (!(deeperThanIn > 0) || !(depthIn > deeperThanIn + rounding)) return null
  const isHere = (other: StepKey | null): boolean => other !== null && sameKey(other, step)
  if (facts.readings.some(({ kind, step: at, value }) => isDepth(kind) && value !== null && isHere(at))) return null
  const plannedSeq = facts.events.findLast(({ kind }) => kind === 'plan')?.seq ?? 0
  const checked = facts.events.some(
    ({ kind, seq, step: at }) => kind === 'second-check' && seq > plannedSeq && isHere(at),
  )
  return checked ? null : { depthIn, deeperThanIn, readsChamber: !facts.flatDeck }
}

/** What is read once a pass was made. */
export const isDepth = (kind: string): boolean => kind === 'cut-depth' || kind === 'edge-depth'

function plannedIn(facts: RouteFacts, { stepId, orderId }: StepKey): number {
  if (facts.plan === null || orderId !== null) return 0
  if (stepId === 'flat-cut') return flatLeftIn(facts)
  return stepId === 'angle-cut' ? facts.plan.angleIn : 0
}
