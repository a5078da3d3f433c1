import { z } from 'zod'
import { stepIdSchema } from './step'
import { text } from './text'

/** The address of a step: of which visit, which step, which run of it, of which outside order. */
export const askedStep = z.object({
  visit: z.uuid(),
  step: stepIdSchema,
  run: text().max(40).default(''),
  order: z.uuid().nullable().default(null),
})
