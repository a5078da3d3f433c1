import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { jobById } from '@/lib/data/jobs'
import { addPrices, lockAccount } from '@/lib/data/prices'
import { shopOf } from '@/lib/data/shop'
import { taxOf } from '@/lib/data/tax-rates'
import { write, type Moment } from '@/lib/data/write'
import type { AddPriceLineInput } from '@/lib/schemas/job'
import { priceOf } from '@/lib/core/money/price-of'

export async function addPriceLine(actor: Actor, input: AddPriceLineInput, moment: Moment): Promise<{ id: string }> {
  must(allow(actor, 'price.change'))
  return write(actor, moment, async (ctx) => {
    const job = await jobById(ctx.tx, input.jobId)
    const shop = await shopOf(ctx.tx)
    const tax = await taxOf(ctx.tx, input.tax, 'tax')
    await lockAccount(ctx.tx, job.id)
    const [id = ''] = await addPrices(ctx, job.id, [priceOf(input, tax, shop, 'unitPrice')])
    return { id }
  })
}
