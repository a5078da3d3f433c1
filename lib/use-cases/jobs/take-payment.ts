import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { minorAt } from '@/lib/core/money/price-of'
import { jobById } from '@/lib/data/jobs'
import { shopOf } from '@/lib/data/shop'
import { write, type Moment } from '@/lib/data/write'
import { takeMoney } from '@/lib/dossier/money/take-money'
import type { TakePaymentInput } from '@/lib/schemas/job'
import { freezePaper } from '@/lib/papers/money-paper'

/** `receiptId`: the receipt that was written with it. */
export type TakenPayment = { readonly id: string; readonly receiptId: string; readonly receipt: string }

/** Money taken or given back at the counter, with its receipt. A wrong entry is not rewritten: it is voided. */
export async function takePayment(actor: Actor, input: TakePaymentInput, moment: Moment): Promise<TakenPayment> {
  must(allow(actor, 'payment.take'))
  const taken = await write(actor, moment, async (ctx) => {
    const job = await jobById(ctx.tx, input.jobId)
    const minor = minorAt(input.amount, await shopOf(ctx.tx), 'amount')
    const { kind, method, how, confirmed } = input
    const { paymentId, receiptId, number } = await takeMoney(ctx, job.id, { kind, minor, method, how, confirmed })
    return { id: paymentId, receiptId, receipt: number }
  })
  await freezePaper(taken.receiptId)
  return taken
}
