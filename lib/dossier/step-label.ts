import { stepLabel } from '@/lib/core/route/table'
import type { StepId } from '@/lib/core/route/step-ids'

/** What a step is called on these heads' routes: the shop's own name for it, where it has one. */
export const labelOf = (rows: readonly { readonly stepId: string; readonly label: string }[], stepId: StepId): string =>
  rows.find((row) => row.stepId === stepId)?.label ?? stepLabel(stepId)
