import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { jobById } from '@/lib/data/jobs'
import { addPrice } from '@/lib/data/prices'
import { shopOf } from '@/lib/data/shop'
import { write, type Moment } from '@/lib/data/write'
import type { AddPriceLineInput } from '@/lib/schemas/job'
import { priceOf } from '@/lib/core/money/price-of'

export async function addPriceLine(actor: Actor, input: AddPriceLineInput, moment: Moment): Promise<{ id: string }> {
  must(allow(actor, 'price.change'))
  return write(actor, moment, async (ctx) => {
    const job = await jobById(ctx.tx, input.jobId)
    const shop = await shopOf(ctx.tx)
    return { id: await addPrice(ctx, job.id, priceOf(input, shop.currencyExponent, 'unitPrice')) }
  })
}
