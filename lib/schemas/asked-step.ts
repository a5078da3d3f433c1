import { z } from 'zod'
import { stepIdSchema } from './step'

/** The address of a step: of which visit, which step, which run of it, of which outside order. */
export const askedStep = z.object({
  visit: z.uuid(),
  step: stepIdSchema,
  run: z.string().max(40).default(''),
  order: z.uuid().nullable().default(null),
})
