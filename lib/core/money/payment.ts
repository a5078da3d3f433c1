import { ok, refuse, type Result } from '../errors'
import { paidOf, type Paid } from './totals'

export const paymentMethods = ['cash', 'card', 'check', 'transfer', 'other'] as const
export type PaymentMethod = (typeof paymentMethods)[number]

type Standing = {
  readonly totalMinor: number
  /** Those that count: no voided one. */
  readonly paid: readonly Paid[]
}

/**
 * Whether this may be taken or given back. Nobody gets back more than was paid; more than is owed is asked twice
 * (`confirmed`). A deposit for a job without prices is never more than is owed.
 * Example: 100.00 paid, a refund of 120.00 → refused as `invalid`.
 */
export function checkPayment(standing: Standing, payment: Paid, confirmed: boolean): Result<true> {
  const paidMinor = paidOf(standing.paid)
  if (payment.minor <= 0) return wrong('amount', 'Enter an amount above zero.')
  if (payment.kind === 'refund') {
    return payment.minor > paidMinor
      ? wrong('amount', 'This is more than was paid. Enter that amount or less.')
      : ok(true)
  }
  const isFirstDeposit = payment.kind === 'deposit' && standing.totalMinor === 0
  if (confirmed || isFirstDeposit || paidMinor + payment.minor <= standing.totalMinor) return ok(true)
  return wrong('confirmed', 'This is more than is owed. Check the amount, or tick “Take more than is owed”.')
}

/**
 * Whether a payment that counts may be voided: what was paid back must still have been paid.
 * Example: 100.00 paid and 50.00 paid back: the payment of 100.00 cannot be voided before the refund is.
 */
export function checkVoid(others: readonly Paid[]): Result<true> {
  if (paidOf(others) >= 0) return ok(true)
  return refuse('wrong-state', 'Part of this was paid back. Void the refund first.')
}

const wrong = (field: string, message: string) => refuse('invalid', message, { fields: { [field]: message } })
