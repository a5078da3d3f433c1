import { must, type Result } from '@/lib/core/errors'
import { checkPayment, type PaymentMethod } from '@/lib/core/money/payment'
import type { Paid } from '@/lib/core/money/totals'
import { newId } from '@/lib/data/ids'
import { addMoneyPaper } from '@/lib/data/money-papers'
import { accountOf, keepDue, lockAccount } from '@/lib/data/prices'
import type { Write } from '@/lib/data/write'
import { paperFacts } from './paper-facts'

export type NewPayment = Paid & {
  readonly method: PaymentMethod
  readonly how: string
  /** More than is owed, and that is meant. */
  readonly confirmed: boolean
  /** What a form calls its amount and its question; left out: as they are called here. */
  readonly fields?: { readonly amount: string; readonly confirmed: string }
}

/** Money taken or given back, and its receipt at once. */
export async function takeMoney(
  ctx: Write,
  jobId: string,
  payment: NewPayment,
): Promise<{ paymentId: string; receiptId: string; number: string }> {
  const { confirmed, kind, minor, method, how } = payment
  await lockAccount(ctx.tx, jobId)
  const { totalMinor, payments } = await accountOf(ctx.tx, jobId)
  const paid = payments.filter(({ voided }) => voided === null)
  must(at(payment.fields ?? {}, checkPayment({ totalMinor, paid }, payment, confirmed)))
  const id = newId(ctx.now)
  await ctx.tx.payment.create({
    data: { id, jobId, kind, minor, method, how, at: ctx.now, byId: ctx.actor.personId },
  })
  const account = await keepDue(ctx.tx, jobId, { grows: true })
  const { facts, points } = await paperFacts(ctx.tx, jobId, 'receipt', ctx.now, {
    account,
    sums: account,
    payment: { kind, minor, method, how, takenBy: ctx.actor.name },
  })
  const receiptId = await addMoneyPaper(ctx, points, facts, { paymentId: id })
  ctx.audit({
    action: 'payment.take',
    subjectId: id,
    jobId,
    changes: { kind, minor, method, how, receipt: facts.number },
  })
  return { paymentId: id, receiptId, number: facts.number }
}

/** The same refusal, at the fields of a form that has them elsewhere. */
function at<T>(names: Readonly<Record<string, string>>, result: Result<T>): Result<T> {
  if (result.ok || !result.refusal.fields) return result
  const fields = Object.entries(result.refusal.fields).map(([field, message]) => [names[field] ?? field, message])
  return { ok: false, refusal: { ...result.refusal, fields: Object.fromEntries(fields) as Record<string, string> } }
}
