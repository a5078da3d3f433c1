import type { Station, StepKey } from '@/lib/core/route/step-ids'

/** Address of one step of one head at a station. */
export function stepHref(station: Station, visitId: string, step: StepKey): string {
  const query = new URLSearchParams({ step: step.stepId })
  if (step.occurrence !== '') query.set('run', step.occurrence)
  if (step.orderId !== null) query.set('order', step.orderId)
  return `/stations/${station}/heads/${visitId}?${query}`
}
