import type { Balance } from '../core/money/balance'
import type { MoneyPaperKind } from '../core/money/paper-facts'
import type { PaymentMethod } from '../core/money/payment'
import type { Paid } from '../core/money/totals'

/** Whose words they are: the shop's own, or the customer's. */
export type Reader = 'shop' | 'customer'

const owed: Readonly<Record<Reader, string>> = { shop: 'We owe the customer', customer: 'We owe you' }

/** The one sentence on what is left: "To pay", "We owe the customer", "Paid in full", "Nothing charged". */
export function balanceLabel({ code }: Balance, reader: Reader = 'shop'): string {
  if (code === 'to-refund') return owed[reader]
  return { 'to-pay': 'To pay', paid: 'Paid in full', nothing: 'Nothing charged' }[code]
}

/** Whether an amount stands beside the label. */
export const hasAmount = ({ code }: Balance): boolean => code === 'to-pay' || code === 'to-refund'

export const paymentKindWords: Readonly<Record<Paid['kind'], string>> = {
  deposit: 'Deposit',
  payment: 'Payment',
  refund: 'Paid back',
}

export const paymentMethodWords: Readonly<Record<PaymentMethod, string>> = {
  cash: 'cash',
  card: 'card',
  check: 'check',
  transfer: 'bank transfer',
  other: 'other',
}

/** "card", "check, no. 118"; of an older entry only what was written: "paid cash". */
export const howPaidWords = (method: PaymentMethod, note: string): string =>
  note !== '' && method === 'other' ? note : [paymentMethodWords[method], note].filter(Boolean).join(', ')

export const moneyPaperWords: Readonly<Record<MoneyPaperKind, string>> = {
  invoice: 'Invoice',
  'credit-note': 'Credit note',
  receipt: 'Receipt',
}
