import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { priceOf } from '@/lib/core/money/price-of'
import { changePrice, lockAccount, openPrice } from '@/lib/data/prices'
import { shopOf } from '@/lib/data/shop'
import { taxOf } from '@/lib/data/tax-rates'
import { write, type Moment } from '@/lib/data/write'
import type { ChangePriceLineInput } from '@/lib/schemas/job'
import { changingOpenLines } from './changing-open-lines'

/** Changes a line that is on no invoice yet, with a reason; the audit keeps both amounts. */
export async function changePriceLine(
  actor: Actor,
  input: ChangePriceLineInput,
  moment: Moment,
): Promise<{ id: string }> {
  must(allow(actor, 'price.change'))
  return write(actor, moment, async (ctx) => {
    const { jobId, lineId } = input
    await lockAccount(ctx.tx, jobId)
    const before = await openPrice(ctx.tx, jobId, lineId)
    const typed = priceOf(input, await taxOf(ctx.tx, input.tax, 'tax'), await shopOf(ctx.tx), 'unitPrice')
    const isDiscount = before.reason !== ''
    const after = isDiscount
      ? { ...typed, text: before.text, reason: input.text, quantityThousandths: 1000, unitMinor: -typed.unitMinor }
      : typed
    await changingOpenLines(ctx, jobId, () => changePrice(ctx, jobId, input, after))
    return { id: lineId }
  })
}
