import { z } from 'zod'
import { paymentMethods } from '@/lib/core/money/payment'
import { requiredText, words } from './figure'
import { amount, optionalAmount } from './money'
import { text } from './text'

const id = text().min(1).max(64)

export const writeInvoiceSchema = z.object({
  jobId: id,
  /** What the lines came to on the page, with tax, in minor units: nothing else is invoiced. */
  seenMinor: z.number().int(),
})
export type WriteInvoiceInput = z.output<typeof writeInvoiceSchema>

export const writeCreditNoteSchema = z.object({
  invoiceId: id,
  reason: requiredText('Enter why the credit note is written.', 200),
  /** Of each line of the invoice, without tax; '' takes nothing back. */
  amounts: z.array(optionalAmount).max(200),
})
export type WriteCreditNoteForm = z.input<typeof writeCreditNoteSchema>
export type WriteCreditNoteInput = z.output<typeof writeCreditNoteSchema>

export const voidPaymentSchema = z.object({ paymentId: id, reason: requiredText('Enter why it is voided.', 200) })
export type VoidPaymentInput = z.output<typeof voidPaymentSchema>

/** A payment taken while heads go out; '' takes none. */
export const paymentAtHandOver = z.object({
  amount: z.union([z.literal(''), amount]),
  method: z.enum(paymentMethods, 'Choose how it is paid.'),
  how: words(60),
  confirmed: z.boolean(),
})
