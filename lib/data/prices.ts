import 'server-only'
import { must, RefusedError } from '@/lib/core/errors'
import { jobTotals } from '@/lib/core/money/account'
import { checkHeld } from '@/lib/core/money/account-limits'
import { balanceOf, type Balance } from '@/lib/core/money/balance'
import type { PaymentMethod } from '@/lib/core/money/payment'
import type { PriceLine } from '@/lib/core/money/price-of'
import { totals, type Paid, type Totals } from '@/lib/core/money/totals'
import { changesBetween } from './audit-trail'
import type { Reader, Tx } from './db'
import { newId } from './ids'
import { moneyFacts } from './stored/money-facts'
import { byId, readTables, type Row } from './tables'
import { conflictUnless, type Author, type Write } from './write'

/** Whoever changes a job's account goes one after the other: this holds its row until the transaction ends. */
export const lockAccount = (tx: Tx, jobId: string): Promise<unknown> =>
  tx.job.updateMany({ where: { id: jobId }, data: { id: jobId } })

/** Rewrites what is owed on the job, in the transaction that changed its account. `grows`: refused beyond what is held. */
export async function keepDue(tx: Tx, jobId: string, { grows = false } = {}): Promise<Account> {
  const account = await accountOf(tx, jobId)
  if (grows) must(checkHeld(account))
  await tx.job.updateMany({ where: { id: jobId }, data: { dueMinor: account.dueMinor } })
  return account
}

type From = { readonly visitId: string; readonly findingId: string }

/** `from`: the finding whose answer brought them. */
export async function addPrices(
  ctx: Write<Author>,
  jobId: string,
  lines: readonly PriceLine[],
  from?: From,
): Promise<readonly string[]> {
  const rows = lines.map((line) => ({ ...line, ...from, id: newId(ctx.now), jobId, createdAt: ctx.now }))
  await ctx.tx.priceLine.createMany({ data: rows })
  rows.forEach(({ id }, at) => ctx.audit({ action: 'price-line.add', subjectId: id, jobId, changes: lines[at] }))
  if (rows.length > 0) await keepDue(ctx.tx, jobId, { grows: true })
  return rows.map(({ id }) => id)
}

/** A line of this job that may still change; refused when it was removed, stands on an invoice, or its job has left. */
export async function openPrice(tx: Tx, jobId: string, lineId: string): Promise<Row<'PriceLine'>> {
  const line = await tx.priceLine.findFirst({ where: { id: lineId, jobId, endedAt: null } })
  if (!line) throw new RefusedError({ code: 'not-found', message: 'This price line was already removed.' })
  const refused = (message: string) => new RefusedError({ code: 'wrong-state', message })
  if (line.invoiceId !== null) throw refused('This line is on an invoice. Write a credit note for what changes.')
  const left = await tx.handOver.findFirst({ where: { visit: { jobId } }, select: { visitId: true } })
  if (left) throw refused('A head of this job was handed over. Invoice the job, then write a credit note.')
  return line
}

type Change = { readonly lineId: string; readonly version: number; readonly why: string }

const seen = ({ text, quantityThousandths, unitMinor, taxName, taxMillionths, reason }: PriceLine): PriceLine => ({
  ...{ text, quantityThousandths, unitMinor, taxName, taxMillionths, reason },
})

export async function changePrice(ctx: Write, jobId: string, change: Change, after: PriceLine): Promise<void> {
  const before = await openPrice(ctx.tx, jobId, change.lineId)
  const changes = changesBetween(seen(before), seen(after))
  if (Object.keys(changes).length === 0) return
  const changed = await ctx.tx.priceLine.updateMany({
    where: { id: change.lineId, version: change.version, endedAt: null, invoiceId: null },
    data: { ...after, version: { increment: 1 } },
  })
  conflictUnless(changed, 'this price line')
  await keepDue(ctx.tx, jobId, { grows: true })
  ctx.audit({
    action: 'price-line.change',
    subjectId: change.lineId,
    jobId,
    changes: { line: before.text, ...changes, why: change.why },
  })
}

export async function endPrice(ctx: Write, jobId: string, { lineId, why }: Omit<Change, 'version'>): Promise<void> {
  const line = await openPrice(ctx.tx, jobId, lineId)
  const ended = await ctx.tx.priceLine.updateMany({
    where: { id: lineId, endedAt: null, invoiceId: null },
    data: { endedAt: ctx.now, endReason: why },
  })
  conflictUnless(ended, 'this price line')
  await keepDue(ctx.tx, jobId)
  ctx.audit({ action: 'price-line.remove', subjectId: lineId, jobId, changes: { ...seen(line), why } })
}

/** The lines that a finding's answer brought and nobody removed. */
export async function pricesOfFinding(tx: Tx, jobId: string, findingId: string): Promise<readonly string[]> {
  const lines = await tx.priceLine.findMany({ where: { jobId, findingId, endedAt: null }, select: { id: true } })
  return lines.map(({ id }) => id)
}

export type AccountLine = PriceLine & {
  readonly id: string
  readonly version: number
  /** The invoice that it stands on; null: not invoiced yet. */
  readonly invoice: string | null
}
export type AccountPayment = Paid & {
  readonly id: string
  readonly method: PaymentMethod
  readonly how: string
  readonly at: Date
  readonly byId: string
  /** Why it does not count; null: it does. */
  readonly voided: string | null
  readonly receipt: { readonly id: string; readonly number: string } | null
}
export type AccountPaper = {
  readonly id: string
  readonly kind: 'invoice' | 'credit-note'
  readonly number: string
  readonly at: Date
  readonly totalMinor: number
  readonly reason: string
  /** Of a credit note: the id of its invoice. */
  readonly invoiceId: string | null
}

/** How a job stands: lines, papers and payments in the order they came, what they come to, and what is left. */
export type Account = Totals & {
  readonly prices: readonly AccountLine[]
  readonly payments: readonly AccountPayment[]
  readonly papers: readonly AccountPaper[]
  /** With tax, of the lines that are on no invoice yet. */
  readonly openMinor: number
  readonly balance: Balance
}

const ofJob = `"jobId" = (SELECT "jobId" FROM "e")`
const tables = {
  PriceLine: `${ofJob} AND "endedAt" IS NULL`,
  Payment: ofJob,
  PaymentVoid: `"paymentId" IN (SELECT "id" FROM "Payment" WHERE ${ofJob})`,
  MoneyPaper: ofJob,
}

export async function accountOf(reader: Reader, jobId: string): Promise<Account> {
  const scope = { sql: `"e" AS (SELECT CAST(? AS TEXT) AS "jobId")`, params: [jobId] }
  const rows = await readTables(reader, scope, tables)
  const papers = rows.MoneyPaper.toSorted(byTime(({ at }) => at))
  const lines = rows.PriceLine.toSorted(byTime(({ createdAt }) => createdAt))
  const payments = paymentsOf(rows.Payment, rows.PaymentVoid, papers)
  const open = lines.filter(({ invoiceId }) => invoiceId === null)
  const frozen = papers.filter(({ kind }) => kind !== 'receipt')
  const paid = payments.filter(({ voided }) => voided === null)
  const all = jobTotals(open, frozen.map(frozenOf), paid)
  const numbers = byId(papers)
  return {
    ...all,
    prices: lines.map((line) => accountLine(line, numbers)),
    payments,
    papers: frozen.map(paperOf),
    openMinor: totals(open, []).totalMinor,
    balance: balanceOf(all),
  }
}

const byTime =
  <T extends { readonly id: string }>(timeOf: (row: T) => Date) =>
  (a: T, b: T): number =>
    timeOf(a).getTime() - timeOf(b).getTime() || (a.id < b.id ? -1 : 1)

const accountLine = (line: Row<'PriceLine'>, papers: ReadonlyMap<string, Row<'MoneyPaper'>>): AccountLine => ({
  ...seen(line),
  id: line.id,
  version: line.version,
  invoice: line.invoiceId === null ? null : (papers.get(line.invoiceId)?.number ?? null),
})

const frozenOf = ({ id, kind, facts, netMinor, taxMinor }: Row<'MoneyPaper'>) => ({
  kind: kind as 'invoice' | 'credit-note',
  taxes: moneyFacts.read(facts, id).taxes,
  netMinor,
  taxMinor,
})

const paperOf = ({ id, kind, number, at, totalMinor, reason, invoiceId }: Row<'MoneyPaper'>): AccountPaper => ({
  ...{ id, number, at, totalMinor, reason, invoiceId },
  kind: kind as AccountPaper['kind'],
})

function paymentsOf(
  payments: readonly Row<'Payment'>[],
  voids: readonly Row<'PaymentVoid'>[],
  papers: readonly Row<'MoneyPaper'>[],
): AccountPayment[] {
  return payments.toSorted(byTime(({ at }) => at)).map(({ id, kind, minor, method, how, at, byId: person }) => {
    const receipt = papers.find(({ paymentId }) => paymentId === id)
    return {
      ...{ id, minor, how, at, byId: person },
      kind: kind as Paid['kind'],
      method: method as PaymentMethod,
      voided: voids.find(({ paymentId }) => paymentId === id)?.reason ?? null,
      receipt: receipt ? { id: receipt.id, number: receipt.number } : null,
    }
  })
}

/** The lines that are on no invoice yet, as the account is now. */
export const openLines = async (reader: Reader, jobId: string): Promise<readonly AccountLine[]> =>
  (await accountOf(reader, jobId)).prices.filter(({ invoice }) => invoice === null)

/** Fixes these lines to the invoice; somebody who was first is a conflict. */
export async function putOnInvoice(
  ctx: Write,
  jobId: string,
  lines: readonly AccountLine[],
  invoiceId: string,
): Promise<void> {
  const fixed = await ctx.tx.priceLine.updateMany({
    where: { id: { in: lines.map(({ id }) => id) }, jobId, invoiceId: null, endedAt: null },
    data: { invoiceId },
  })
  conflictUnless({ count: fixed.count === lines.length ? 1 : 0 }, 'the price lines')
  await keepDue(ctx.tx, jobId)
}

export async function paymentById(reader: Reader, id: string): Promise<Row<'Payment'>> {
  const payment = await reader.payment.findUnique({ where: { id } })
  if (!payment) throw new RefusedError({ code: 'not-found', message: 'There is no such payment here.' })
  return payment
}

export async function addVoid(ctx: Write, payment: { id: string; jobId: string }, reason: string): Promise<void> {
  await ctx.tx.paymentVoid.create({
    data: { paymentId: payment.id, reason, at: ctx.now, byId: ctx.actor.personId },
  })
  await keepDue(ctx.tx, payment.jobId)
}
