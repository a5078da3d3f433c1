import { z } from 'zod'
import { isStepId, type StepId } from '@/lib/core/route/step-ids'

/** A step by its id: one that stands from the start, or one of the shop's own. Whether it is on a route is for the route. */
export const stepIdSchema = z.custom<StepId>(
  (id) => typeof id === 'string' && isStepId(id),
  'This step does not exist. Pick another.',
)
