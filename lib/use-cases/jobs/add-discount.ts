import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must, RefusedError } from '@/lib/core/errors'
import { checkDiscounts, checkTaxes } from '@/lib/core/money/account-limits'
import { discountOf } from '@/lib/core/money/price-of'
import { addPrices, lockAccount, openLines } from '@/lib/data/prices'
import { shopOf } from '@/lib/data/shop'
import { taxOf } from '@/lib/data/tax-rates'
import { write, type Moment } from '@/lib/data/write'
import type { AddDiscountInput } from '@/lib/schemas/job'

/** Takes an amount off what is not invoiced yet, with a reason that the customer reads. Never below zero. */
export async function addDiscount(actor: Actor, input: AddDiscountInput, moment: Moment): Promise<{ id: string }> {
  must(allow(actor, 'price.change'))
  return write(actor, moment, async (ctx) => {
    await lockAccount(ctx.tx, input.jobId)
    const line = discountOf(input, await taxOf(ctx.tx, input.tax, 'tax'), await shopOf(ctx.tx))
    const open = await openLines(ctx.tx, input.jobId)
    if (line.unitMinor === 0) throw wrong('Enter an amount above zero.')
    if (!checkDiscounts(open, [...open, line]).ok) {
      throw wrong('The discount is more than the price lines come to. Enter less.')
    }
    must(checkTaxes(open, [...open, line]))
    const [id = ''] = await addPrices(ctx, input.jobId, [line])
    return { id }
  })
}

const wrong = (message: string): RefusedError =>
  new RefusedError({ code: 'invalid', message, fields: { amount: message } })
