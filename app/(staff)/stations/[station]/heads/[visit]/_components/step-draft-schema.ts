import { z } from 'zod'

export const stepDraftSchema = z.object({
  shape: z.literal(1),
  answers: z.record(
    z.string(),
    z.object({
      text: z.string(),
      notTaken: z.string().nullable(),
      again: z.string().optional(),
      repeat: z.string().optional(),
      filled: z.literal(true).optional(),
    }),
  ),
  conditions: z.record(z.string(), z.string()),
  instruments: z.record(z.string(), z.string()).default({}),
})
