import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { linkById } from '@/lib/data/links'
import { write, type Moment } from '@/lib/data/write'
import type { revokeCustomerLinkSchema } from '@/lib/schemas/release'

/** Ends one link at once. Ended is ended: again changes nothing. */
export async function revokeCustomerLink(
  actor: Actor,
  input: z.output<typeof revokeCustomerLinkSchema>,
  moment: Moment,
): Promise<{ linkId: string }> {
  must(allow(actor, 'customer-link.make'))
  return write(actor, moment, async (ctx) => {
    const link = await linkById(ctx.tx, input.linkId)
    if (link.revokedAt === null) {
      await ctx.tx.customerLink.update({ where: { id: link.id }, data: { revokedAt: ctx.now } })
      ctx.audit({ action: 'customer-link.revoke', subjectId: link.id, jobId: link.jobId })
    }
    return { linkId: link.id }
  })
}
