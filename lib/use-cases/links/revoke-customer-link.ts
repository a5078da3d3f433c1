import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
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
    const link = await ctx.tx.customerLink.findUnique({ where: { id: input.linkId } })
    if (!link) throw new RefusedError({ code: 'not-found', message: 'There is no such link.' })
    if (link.revokedAt === null) {
      await ctx.tx.customerLink.update({ where: { id: link.id }, data: { revokedAt: ctx.now } })
      ctx.audit({ action: 'customer-link.revoke', subjectId: link.id, jobId: link.jobId })
    }
    return { linkId: link.id }
  })
}
