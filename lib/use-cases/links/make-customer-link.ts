import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { jobById } from '@/lib/data/jobs'
import { linkPath, makeLink } from '@/lib/data/links'
import { write, type Moment } from '@/lib/data/write'
import type { makeCustomerLinkSchema } from '@/lib/schemas/release'

export type MadeLink = { readonly linkId: string; readonly path: string; readonly expiresAt: string }

/**
 * A private link for the customer of one job. Older links go on working. The address is shown this once: what is kept,
 * also of the operation's answer, does not hold it.
 */
export async function makeCustomerLink(
  actor: Actor,
  input: z.output<typeof makeCustomerLinkSchema>,
  moment: Moment,
): Promise<MadeLink> {
  must(allow(actor, 'customer-link.make'))
  let made: { readonly token: string; readonly expiresAt: Date } | undefined
  const { linkId } = await write(actor, moment, async (ctx) => {
    const job = await jobById(ctx.tx, input.jobId)
    const link = await makeLink(ctx, job.id)
    made = link
    return { linkId: link.linkId }
  })
  if (!made) {
    throw new RefusedError({
      code: 'wrong-state',
      message: 'This link was already made and is shown only once. Make a new link and revoke the old one.',
    })
  }
  return { linkId, path: linkPath(made.token), expiresAt: made.expiresAt.toISOString() }
}
