import type { RouteStep } from '../core/route/types'
import type { Graduation } from './graduations'

/** A route as its scale: what is not needed has no graduation; a clamp stands at the step that would be next. */
export function graduationsOf(route: readonly RouteStep[], held: boolean): Graduation[] {
  const needed = route.filter((step) => step.state !== 'not needed')
  const next = needed.findIndex((step) => step.state !== 'done' && step.state !== 'waived')
  return needed.map((step, place) => ({
    label: step.label,
    state: step.state,
    owesReading: step.owes.length > 0,
    outside: step.outside || step.station === 'outside',
    held: held && place === next,
  }))
}
