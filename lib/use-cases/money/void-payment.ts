import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must, RefusedError } from '@/lib/core/errors'
import { checkVoid } from '@/lib/core/money/payment'
import { accountOf, addVoid, lockAccount, paymentById } from '@/lib/data/prices'
import { write, type Moment } from '@/lib/data/write'
import type { VoidPaymentInput } from '@/lib/schemas/money-papers'

/** A payment that was entered by mistake does not count any more; it and its receipt stay on record. */
export async function voidPayment(actor: Actor, input: VoidPaymentInput, moment: Moment): Promise<{ id: string }> {
  must(allow(actor, 'payment.take'))
  return write(actor, moment, async (ctx) => {
    const { jobId } = await paymentById(ctx.tx, input.paymentId)
    await lockAccount(ctx.tx, jobId)
    const { payments } = await accountOf(ctx.tx, jobId)
    const counting = payments.filter(({ voided }) => voided === null)
    const payment = counting.find(({ id }) => id === input.paymentId)
    if (!payment) throw new RefusedError({ code: 'wrong-state', message: 'This payment was already voided.' })
    must(checkVoid(counting.filter(({ id }) => id !== payment.id)))
    await addVoid(ctx, { id: payment.id, jobId }, input.reason)
    const { kind, minor, receipt } = payment
    ctx.audit({
      action: 'payment.void',
      subjectId: payment.id,
      jobId,
      changes: { kind, minor, receipt: receipt?.number ?? '', why: input.reason },
    })
    return { id: payment.id }
  })
}
