import { totals, type Paid, type Totals } from '@/lib/core/money/totals'
import type { accountOf } from '@/lib/data/prices'

export type AccountView = Totals & {
  readonly prices: readonly {
    readonly id: string
    readonly text: string
    readonly quantity: number
    readonly unitMinor: number
    readonly taxBasisPoints: number
  }[]
  readonly payments: readonly (Paid & { readonly id: string; readonly how: string; readonly at: Date })[]
}

export function accountView(account: Awaited<ReturnType<typeof accountOf>>): AccountView {
  const prices = account.prices.map(({ id, text, quantity, unitMinor, taxBasisPoints }) => {
    return { id, text, quantity, unitMinor, taxBasisPoints }
  })
  const payments = account.payments.map(({ id, kind, minor, how, at }) => {
    return { id, kind: kind as Paid['kind'], minor, how, at }
  })
  return { ...totals(prices, payments), prices, payments }
}
