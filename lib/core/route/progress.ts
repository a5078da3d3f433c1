import type { RouteStep, StepState } from './types'

/** One step of a route as the head's scale shows it. */
export type ProgressMark = {
  readonly label: string
  readonly state: StepState
  readonly owesReading: boolean
  readonly outside: boolean
  readonly held: boolean
}

/**
 * The route as the head's scale: one mark a step, in working order. Steps no longer needed are left out unless they were
 * done; a hold stands at the first step that is open.
 */
export function progress(route: readonly RouteStep[], held: boolean): ProgressMark[] {
  const shown = route.filter((step) => step.state !== 'not needed')
  const holdAt = held ? shown.findIndex((step) => step.state !== 'done' && step.state !== 'waived') : -1
  return shown.map((step, place) => ({
    label: step.label,
    state: step.state,
    owesReading: step.owes.some((owed) => !owed.optional),
    outside: step.outside || step.byVendor !== null,
    held: place === holdAt,
  }))
}
