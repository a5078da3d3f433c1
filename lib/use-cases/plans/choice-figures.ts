import type { PlanChoiceFigures } from '@/lib/core/options/plan-record-of'
import type { PlanChoice } from '@/lib/schemas/plan'

/** The typed figures of a choice as the core takes them. */
export const choiceFigures = (choice: PlanChoice): PlanChoiceFigures => ({
  kind: choice.kind,
  splitBy: choice.splitBy,
  flatIn: choice.flatIn?.value ?? null,
  angleIn: choice.angleIn?.value ?? null,
  angleDeg: choice.angleDeg?.value ?? null,
  stopAtIn: choice.stopAtIn?.value ?? null,
  sinkIn: choice.sinkIn?.value ?? null,
})
