import 'server-only'
import type { PriceLine } from '@/lib/core/money/price-of'
import { totals, type Paid, type Totals } from '@/lib/core/money/totals'
import type { Reader } from './db'
import { newId } from './ids'
import type { Write } from './write'

export async function addPrice(ctx: Write, jobId: string, line: PriceLine): Promise<string> {
  const id = newId(ctx.now)
  await ctx.tx.priceLine.create({ data: { ...line, id, jobId, createdAt: ctx.now } })
  ctx.audit({ action: 'price-line.add', subjectId: id, jobId, changes: line })
  return id
}

/** Takes a line off the job; false: it is not on it, or was taken off before. */
export async function endPrice(ctx: Write, jobId: string, lineId: string): Promise<boolean> {
  const ended = await ctx.tx.priceLine.updateMany({
    where: { id: lineId, jobId, endedAt: null },
    data: { endedAt: ctx.now },
  })
  if (ended.count === 0) return false
  const select = { text: true, quantity: true, unitMinor: true, taxBasisPoints: true } as const
  const line = await ctx.tx.priceLine.findUniqueOrThrow({ where: { id: lineId }, select })
  ctx.audit({ action: 'price-line.remove', subjectId: lineId, jobId, changes: line })
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
  ctx.audit({ action: 'payment.take', subjectId: id, jobId, changes: payment })
  return id
}

/** What stands on a job: price lines and payments in the order they came, and what they come to. */
export type Account = Totals & {
  readonly prices: readonly (PriceLine & { readonly id: string })[]
  readonly payments: readonly (Paid & { readonly id: string; readonly how: string; readonly at: Date })[]
}

export async function accountOf(reader: Reader, jobId: string): Promise<Account> {
  const prices = await reader.priceLine.findMany({
    where: { jobId, endedAt: null },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
    select: { id: true, text: true, quantity: true, unitMinor: true, taxBasisPoints: true },
  })
  const rows = await reader.payment.findMany({
    where: { jobId },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
    select: { id: true, kind: true, minor: true, how: true, at: true },
  })
  const payments = rows.map((row) => ({ ...row, kind: row.kind as Paid['kind'] }))
  return { ...totals(prices, payments), prices, payments }
}
