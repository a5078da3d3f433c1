import { z } from 'zod'

export const attemptDraftSchema = z.object({
  shape: z.literal(1),
  name: z.string(),
  op: z.uuid(),
  input: z.unknown(),
})

export const formDraftSchema = z.object({ shape: z.literal(1), values: z.record(z.string(), z.unknown()) })

export const tabDraftSchema = formDraftSchema.extend({ name: z.string(), at: z.iso.datetime() })
