import 'server-only'
import type { MoneyFacts } from '@/lib/core/money/paper-facts'
import type { Reader } from './db'
import { mapPage, pageOfRows, rowsOfPage, type Paged } from './paging'
import { moneyFacts } from './stored/money-facts'

/** From the first moment to before the last. */
export type Span = { readonly from: Date; readonly to: Date }

const inSpan = ({ from, to }: Span) => ({ gte: from, lt: to })
const inOrder = [{ at: 'asc' }, { id: 'asc' }] as const

/** Invoices and credit notes of a time, the first one first, as they were frozen. */
export async function papersIn(reader: Reader, span: Span): Promise<MoneyFacts[]> {
  const rows = await reader.moneyPaper.findMany({
    where: { kind: { in: ['invoice', 'credit-note'] }, at: inSpan(span) },
    orderBy: [...inOrder],
    select: { id: true, facts: true },
  })
  return rows.map(({ id, facts }) => moneyFacts.read(facts, id))
}

/** Payments of a time, voided ones too. */
export const paymentsIn = (reader: Reader, span: Span) =>
  reader.payment.findMany({
    where: { at: inSpan(span) },
    orderBy: [...inOrder],
    include: {
      voided: true,
      receipt: { select: { number: true } },
      job: { select: { number: true, customer: { select: { contact: { select: { name: true } } } } } },
    },
  })

export type UnpaidJob = {
  readonly id: string
  readonly number: string
  readonly customer: string
  readonly phone: string
  readonly dueMinor: number
  /** The first invoice's day; null: nothing was invoiced. */
  readonly invoicedAt: Date | null
  /** When a head left with something to pay, and why the owner let it go. */
  readonly left: { readonly at: Date; readonly reason: string } | null
}

/** A page of the jobs with something left to pay that were invoiced, or of which a head has left; the oldest first. */
export async function unpaidJobs(reader: Reader, page: number): Promise<Paged<UnpaidJob>> {
  const jobs = await reader.job.findMany({
    where: {
      dueMinor: { gt: 0 },
      OR: [{ moneyPapers: { some: { kind: 'invoice' } } }, { visits: { some: { handOver: { isNot: null } } } }],
    },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
    ...rowsOfPage(page),
    select: {
      ...{ id: true, number: true, dueMinor: true },
      customer: { select: { contact: { select: { name: true, phone: true } } } },
      moneyPapers: { where: { kind: 'invoice' }, orderBy: { at: 'asc' }, take: 1, select: { at: true } },
      visits: { select: { handOver: { select: { at: true, unpaidReason: true } } } },
    },
  })
  return mapPage(pageOfRows(jobs), ({ customer: { contact }, moneyPapers, visits, ...job }) => {
    const gone = visits.flatMap(({ handOver }) => (handOver ? [handOver] : []))
    const last = gone.toSorted((a, b) => b.at.getTime() - a.at.getTime())[0]
    return {
      ...job,
      customer: contact?.name ?? '',
      phone: contact?.phone ?? '',
      invoicedAt: moneyPapers[0]?.at ?? null,
      left: last ? { at: last.at, reason: last.unpaidReason } : null,
    }
  })
}
