import type { ShopBlock } from '../spec/spec-sheet'
import type { Balance } from './balance'
import type { PaymentMethod } from './payment'
import type { PriceLine } from './price-of'
import type { Paid, TaxAtRate } from './totals'

export const moneyPaperKinds = ['invoice', 'credit-note', 'receipt'] as const
export type MoneyPaperKind = (typeof moneyPaperKinds)[number]

/** A line of an invoice as it was, or what a credit note takes back of it. */
export type PaperLine = PriceLine & {
  readonly netMinor: number
  /** Of a credit note: the place of the line on its invoice. */
  readonly line: number
}

/** All that an invoice, a credit note or a receipt says: frozen, so that it reads the same for ever. */
export type MoneyFacts = {
  readonly kind: MoneyPaperKind
  readonly number: string
  /** ISO 8601. */
  readonly at: string
  readonly locale: string
  readonly timeZone: string
  readonly currency: string
  readonly shop: ShopBlock
  readonly jobNumber: string
  readonly customer: { readonly name: string; readonly address: string }
  readonly engine: string
  readonly heads: readonly string[]
  readonly lines: readonly PaperLine[]
  readonly taxes: readonly TaxAtRate[]
  readonly netMinor: number
  readonly taxMinor: number
  readonly totalMinor: number
  /** What was paid on the job when it was written, the payment of a receipt among it. */
  readonly paidMinor: number
  /** How the job stood then. */
  readonly balance: Balance
  /** Of a credit note: its invoice's number, and why it was written. */
  readonly of: string
  readonly reason: string
  /** Of a receipt: what was taken or given back. */
  readonly payment: (Paid & { readonly method: PaymentMethod; readonly how: string; readonly takenBy: string }) | null
}
