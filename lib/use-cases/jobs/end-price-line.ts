import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { endPrice, lockAccount } from '@/lib/data/prices'
import { write, type Moment } from '@/lib/data/write'
import type { EndPriceLineInput } from '@/lib/schemas/job'
import { changingOpenLines } from './changing-open-lines'

/** Takes a price line off the job, with a reason; the audit keeps that it was there. */
export async function endPriceLine(actor: Actor, input: EndPriceLineInput, moment: Moment): Promise<{ id: string }> {
  must(allow(actor, 'price.change'))
  return write(actor, moment, async (ctx) => {
    await lockAccount(ctx.tx, input.jobId)
    await changingOpenLines(ctx, input.jobId, () => endPrice(ctx, input.jobId, input))
    return { id: input.lineId }
  })
}
