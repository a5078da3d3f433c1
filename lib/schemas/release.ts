import { z } from 'zod'
import { requiredText, words } from './figure'

export const releaseVisitSchema = z.object({
  visitId: z.uuid(),
  version: z.number().int(),
  /** What a later revision corrects; empty at the first release. */
  reason: words(300),
})

export const handOverSchema = z.object({
  jobId: z.uuid(),
  takenBy: requiredText('Enter who picks them up.'),
  note: words(300),
  heads: z
    .array(
      z.object({
        visitId: z.uuid(),
        side: requiredText('Enter the bank or side, or “not said”.', 80),
        partsBack: words(300),
      }),
    )
    .min(1, 'Pick at least one head.')
    .max(20),
})

export const makeCustomerLinkSchema = z.object({ jobId: z.uuid() })
export const revokeCustomerLinkSchema = z.object({ linkId: z.uuid() })
