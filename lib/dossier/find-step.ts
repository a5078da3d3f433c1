import { RefusedError } from '@/lib/core/errors'
import { sameKey } from '@/lib/core/route/keys'
import type { RouteStep } from '@/lib/core/route/types'
import type { StepKey } from '@/lib/core/route/step-ids'
import type { VisitRecord } from '@/lib/data/visit-records'

/** The step of this key; refused with `not-on-route` when the route has none, or no longer needs it. */
export function findStep(route: readonly RouteStep[], key: StepKey): RouteStep {
  const step = route.find((candidate) => sameKey(candidate, key))
  if (!step || step.state === 'not needed') {
    throw new RefusedError({
      code: 'not-on-route',
      message: 'This step is no longer on the route of this head. Reload the page.',
    })
  }
  return step
}

type Event = VisitRecord['events'][number]

/** Whether something happened at this step. */
export const isAt = (event: Event, key: StepKey): boolean =>
  event.stepId === key.stepId && event.occurrence === key.occurrence && event.orderId === key.orderId

/** Number of the last event at a step: what a person saw, and whether something came since. */
export const lastSeq = (visit: Pick<VisitRecord, 'events'>, key: StepKey): number =>
  visit.events.findLast((event) => isAt(event, key))?.seq ?? 0
