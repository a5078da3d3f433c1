import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { invoiceRows, paymentRows, taxRows, type BookPayment } from '@/lib/core/money/books'
import { csvOf, decimalSign } from '@/lib/core/money/csv'
import type { PaymentMethod } from '@/lib/core/money/payment'
import type { Paid } from '@/lib/core/money/totals'
import { addDays, dayIn, startOfDay } from '@/lib/core/shop/calendar'
import { papersIn, paymentsIn, type Span } from '@/lib/data/books'
import { db, type Reader } from '@/lib/data/db'
import { namesOf } from '@/lib/data/people'
import { shopOf } from '@/lib/data/shop'
import { write, type Moment } from '@/lib/data/write'
import type { BooksInput } from '@/lib/schemas/books'
import { paymentKindWords, paymentMethodWords } from '@/lib/words/money'

export type BookFile = { readonly name: string; readonly text: string }

/** Invoices, payments or tax of some days as a file that a spreadsheet opens; that it was taken is on record. */
export async function exportBooks(actor: Actor, { kind, from, to }: BooksInput, { now }: Moment): Promise<BookFile> {
  must(allow(actor, 'bookkeeping.see'))
  const client = await db()
  const { timeZone, currencyExponent, locale } = await shopOf(client)
  const span = { from: startOfDay(timeZone, from), to: startOfDay(timeZone, addDays(to, 1)) }
  const manner = { currencyExponent, dayOf: (at: Date) => dayIn(timeZone, at) }
  const rows =
    kind === 'payments'
      ? paymentRows(await bookPayments(client, span), manner)
      : (kind === 'tax' ? taxRows : invoiceRows)(await papersIn(client, span), manner)
  await write(actor, { now }, async ({ audit }) => {
    audit({ action: 'export.books', subjectId: kind, changes: { kind, from, to } })
  })
  return { name: `${kind}-${from}-${to}.csv`, text: csvOf(rows, decimalSign(locale)) }
}

async function bookPayments(reader: Reader, span: Span): Promise<BookPayment[]> {
  const payments = await paymentsIn(reader, span)
  const names = await namesOf(payments.map(({ byId }) => byId))
  return payments.map(({ kind, minor, method, how, at, byId, voided, receipt, job }) => ({
    receipt: receipt?.number ?? '',
    at,
    jobNumber: job.number,
    customer: job.customer.contact?.name ?? '',
    kind: paymentKindWords[kind as Paid['kind']],
    method: paymentMethodWords[method as PaymentMethod],
    note: how,
    minor: kind === 'refund' ? -minor : minor,
    takenBy: names.get(byId) ?? '',
    voided: voided?.reason ?? '',
  }))
}
