import 'server-only'
import type { Reader } from './db'
import { newId } from './ids'
import type { Write } from './write'

export type NewPriceLine = {
  readonly text: string
  readonly quantity: number
  readonly unitMinor: number
  readonly taxBasisPoints: number
}

export async function addPrice(ctx: Write, jobId: string, line: NewPriceLine): Promise<string> {
  const id = newId(ctx.now)
  await ctx.tx.priceLine.create({ data: { ...line, id, jobId, createdAt: ctx.now } })
  ctx.audit({ action: 'price.add', subject: 'price-line', subjectId: id, jobId, changes: line })
  return id
}

/** Takes a line off the job; false: it is not on it, or was taken off before. */
export async function endPrice(ctx: Write, jobId: string, lineId: string): Promise<boolean> {
  const ended = await ctx.tx.priceLine.updateMany({
    where: { id: lineId, jobId, endedAt: null },
    data: { endedAt: ctx.now },
  })
  if (ended.count === 0) return false
  ctx.audit({ action: 'price.end', subject: 'price-line', subjectId: lineId, jobId })
  return true
}

export type NewPayment = {
  readonly kind: 'deposit' | 'payment' | 'refund'
  readonly minor: number
  readonly how: string
}

export async function addPayment(ctx: Write, jobId: string, payment: NewPayment): Promise<string> {
  const id = newId(ctx.now)
  await ctx.tx.payment.create({ data: { ...payment, id, jobId, at: ctx.now, byId: ctx.actor.personId } })
  ctx.audit({ action: 'payment.take', subject: 'payment', subjectId: id, jobId, changes: payment })
  return id
}

/** Standing price lines and all payments, in the order they came. */
export async function accountOf(reader: Reader, jobId: string) {
  const prices = await reader.priceLine.findMany({
    where: { jobId, endedAt: null },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
  })
  const payments = await reader.payment.findMany({ where: { jobId }, orderBy: [{ at: 'asc' }, { id: 'asc' }] })
  return { prices, payments }
}
