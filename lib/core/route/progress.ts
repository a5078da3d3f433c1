import { keyIn } from './keys'
import type { StepKey } from './step-ids'
import type { RouteStep, StepState } from './types'

/** One step of a route as the head's scale shows it. */
export type ProgressMark = {
  readonly label: string
  readonly state: StepState
  readonly owesReading: boolean
  readonly outside: boolean
  readonly held: boolean
}

/** The same with the place where it is done. */
export type StepMark = ProgressMark & StepKey & Pick<RouteStep, 'station'>

/**
 * The route as the head's scale: one mark a step, in working order. Steps no longer needed are left out unless they were
 * done; a hold stands at the first step that is open.
 */
export const progress = (route: readonly RouteStep[], held: boolean): ProgressMark[] =>
  marked(route, held, (_, mark) => mark)

/** The same for those who go from a mark to its step. */
export const stepMarks = (route: readonly RouteStep[], held: boolean): StepMark[] =>
  marked(route, held, (step, mark) => ({ ...keyIn(step), station: step.station, ...mark }))

function marked<Mark>(
  route: readonly RouteStep[],
  held: boolean,
  make: (step: RouteStep, mark: ProgressMark) => Mark,
): Mark[] {
  const shown = route.filter((step) => step.state !== 'not needed')
  const holdAt = held ? shown.findIndex((step) => step.state !== 'done' && step.state !== 'waived') : -1
  return shown.map((step, place) =>
    make(step, {
      label: step.label,
      state: step.state,
      owesReading: step.owes.some((owed) => !owed.optional),
      outside: step.outside || step.byVendor !== null,
      held: place === holdAt,
    }),
  )
}
