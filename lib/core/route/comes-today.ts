import type { Day } from '../shop/calendar'
import { keyText } from './keys'
import type { StepKey } from './step-ids'
import type { RouteStep, Whereabouts } from './types'

/** What a coming step and its head wait for, as far as there is a day for it. */
export type ComingFacts = Pick<RouteStep, 'waitsFor'> & {
  readonly where: Whereabouts
  /** Steps of this head that somebody has started. */
  readonly started: readonly StepKey[]
  /** The day for which a supplier promised the head, or a vendor its return; null: it is not out, or nobody promised. */
  readonly arrivesOn: Day | null
  /** The last day for which the parts it waits for are promised; null: it waits for none, or nobody promised all. */
  readonly partsOn: Day | null
}

/**
 * Whether a step that is still coming is likely to be ready today: each step it waits for has been started; the head, where
 * it is out, is promised for today; its parts, where it waits for any, are promised for today. A promise of an earlier day
 * was broken and says nothing about today. A hold, an open question, a plan that is not made and an order that is not sent
 * have no day.
 *
 * Example: assembly waits for the wash; the wash is started → today. It waits for springs too, promised for tomorrow → not.
 */
export function comesToday({ where, waitsFor, started, arrivesOn, partsOn }: ComingFacts, today: Day): boolean {
  if (where === 'held' || where === 'waiting for an answer') return false
  if ((where === 'away' || where === 'on order') && arrivesOn !== today) return false
  if (where === 'waiting for parts' && partsOn !== today) return false
  const begun = new Set(started.map(keyText))
  return waitsFor.every((wait) => {
    if (wait.code === 'step') return begun.has(keyText(wait.step))
    if (wait.code === 'away' || wait.code === 'arrival') return arrivesOn === today
    return wait.code === 'parts' && partsOn === today
  })
}
