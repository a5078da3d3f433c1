import 'server-only'
import type { StepId, StepKey } from '@/lib/core/route/step-ids'

export const stepKeyOf = (row: { stepId: string; occurrence: string; orderId: string | null }): StepKey => ({
  stepId: row.stepId as StepId,
  occurrence: row.occurrence,
  orderId: row.orderId,
})

export { planRecordOf } from './stored/plan'
