import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must, RefusedError } from '@/lib/core/errors'
import { jobById } from '@/lib/data/jobs'
import { addPayment } from '@/lib/data/prices'
import { shopOf } from '@/lib/data/shop'
import { write, type Moment } from '@/lib/data/write'
import type { TakePaymentInput } from '@/lib/schemas/job'
import { minorAt } from '@/lib/core/money/price-of'

/** Money taken or given back at the counter. A wrong entry is not rewritten: it is given back by a refund. */
export async function takePayment(actor: Actor, input: TakePaymentInput, moment: Moment): Promise<{ id: string }> {
  must(allow(actor, 'payment.take'))
  return write(actor, moment, async (ctx) => {
    const job = await jobById(ctx.tx, input.jobId)
    const shop = await shopOf(ctx.tx)
    const minor = minorAt(input.amount, shop.currencyExponent, 'amount')
    if (minor === 0) {
      const message = 'Enter an amount above zero.'
      throw new RefusedError({ code: 'invalid', message, fields: { amount: message } })
    }
    return { id: await addPayment(ctx, job.id, { kind: input.kind, minor, how: input.how }) }
  })
}
