import { z } from 'zod'
import { requiredText, words } from './figure'
import { paymentAtHandOver } from './money-papers'

export const releaseVisitSchema = z.object({
  visitId: z.uuid(),
  version: z.number().int(),
  /** What a later revision corrects; empty at the first release. */
  reason: words(300),
})

const noPayment = { amount: '', method: 'cash', how: '', confirmed: false } as const

export const handOverSchema = z.object({
  jobId: z.uuid(),
  /** What is paid as the heads go. */
  payment: paymentAtHandOver.default(noPayment),
  /** Why the owner lets them go with something left to pay; '' otherwise. */
  unpaidReason: words(200).default(''),
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
