import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must, RefusedError } from '@/lib/core/errors'
import { endPrice } from '@/lib/data/prices'
import { write, type Moment } from '@/lib/data/write'
import type { EndPriceLineInput } from '@/lib/schemas/job'

/** Takes a price line off the job; the audit keeps that it was there. */
export async function endPriceLine(actor: Actor, input: EndPriceLineInput, moment: Moment): Promise<{ id: string }> {
  must(allow(actor, 'price.change'))
  return write(actor, moment, async (ctx) => {
    if (!(await endPrice(ctx, input.jobId, input.lineId))) {
      throw new RefusedError({ code: 'not-found', message: 'This price line was already removed.' })
    }
    return { id: input.lineId }
  })
}
