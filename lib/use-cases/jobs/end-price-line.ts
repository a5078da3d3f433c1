import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { checkDiscounts, checkTaxes } from '@/lib/core/money/account-limits'
import { endPrice, lockAccount, openLines } from '@/lib/data/prices'
import { write, type Moment } from '@/lib/data/write'
import type { EndPriceLineInput } from '@/lib/schemas/job'

/** Takes a price line off the job, with a reason; the audit keeps that it was there. */
export async function endPriceLine(actor: Actor, input: EndPriceLineInput, moment: Moment): Promise<{ id: string }> {
  must(allow(actor, 'price.change'))
  return write(actor, moment, async (ctx) => {
    await lockAccount(ctx.tx, input.jobId)
    const open = await openLines(ctx.tx, input.jobId)
    await endPrice(ctx, input.jobId, input)
    const left = await openLines(ctx.tx, input.jobId)
    must(checkDiscounts(open, left))
    must(checkTaxes(open, left))
    return { id: input.lineId }
  })
}
