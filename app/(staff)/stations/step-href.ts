import type { Station, StepKey } from '@/lib/core/route/step-ids'

/** The step as the query of an address names it. */
export function stepQuery(step: StepKey): URLSearchParams {
  const query = new URLSearchParams({ step: step.stepId })
  if (step.occurrence !== '') query.set('run', step.occurrence)
  if (step.orderId !== null) query.set('order', step.orderId)
  return query
}

/** Address of one step of one head at a station. */
export const stepHref = (station: Station, visitId: string, step: StepKey): string =>
  `/stations/${station}/heads/${visitId}?${stepQuery(step)}`
