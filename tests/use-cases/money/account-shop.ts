import type { z } from 'zod'
import type { Actor } from '@/lib/core/access/roles'
import { db } from '@/lib/data/db'
import { accountOf } from '@/lib/data/prices'
import { addDiscountSchema, addPriceLineSchema, takePaymentSchema, type BookJobForm } from '@/lib/schemas/job'
import { writeCreditNoteSchema } from '@/lib/schemas/money-papers'
import { addDiscount } from '@/lib/use-cases/jobs/add-discount'
import { addPriceLine } from '@/lib/use-cases/jobs/add-price-line'
import { takePayment } from '@/lib/use-cases/jobs/take-payment'
import { writeCreditNote } from '@/lib/use-cases/money/write-credit-note'
import { writeInvoice } from '@/lib/use-cases/money/write-invoice'
import { at, book, counter, monday } from '../jobs/counter-shop'

/** A flat cut of two heads at 120.00 with 10 %, nothing paid: 264.00 in all. */
export const bookPriced = (over: Partial<BookJobForm> = {}) =>
  book({ prices: [{ text: 'Flat cut', quantity: '2', unitPrice: '120', tax: '10' }], ...over })

export const account = async (jobId: string) => accountOf(await db(), jobId)

export const price = (jobId: string, text: string, unitPrice: string, tax = '10', quantity = '1') =>
  addPriceLine(counter, addPriceLineSchema.parse({ jobId, text, quantity, unitPrice, tax }), at(monday))

export const discount = (jobId: string, amount: string, tax = '10', reason = 'returning customer') =>
  addDiscount(counter, addDiscountSchema.parse({ jobId, amount, tax, reason }), at(monday))

export const pay = (
  jobId: string,
  amount: string,
  over: Partial<z.input<typeof takePaymentSchema>> = {},
  now = monday,
) =>
  takePayment(
    counter,
    takePaymentSchema.parse({ jobId, kind: 'payment', amount, method: 'cash', how: '', confirmed: false, ...over }),
    at(now),
  )

export const invoice = async (jobId: string, actor: Actor = counter, now = monday) =>
  writeInvoice(actor, { jobId, seenMinor: (await account(jobId)).openMinor }, at(now))

export const credit = (invoiceId: string, amounts: readonly string[], reason = 'agreed on the phone', now = monday) =>
  writeCreditNote(counter, writeCreditNoteSchema.parse({ invoiceId, amounts: [...amounts], reason }), at(now))
