import { formatAmount } from '@/lib/core/money/amount'
import { quantityText } from '@/lib/core/money/quantity'
import type { Account, AccountLine, AccountPayment } from '@/lib/data/prices'
import { taxField, type TaxPick } from '@/lib/data/tax-rates'

/** A line as a form has it; a discount's amount stands there without a sign. */
export type TypedLine = {
  readonly text: string
  readonly quantity: string
  readonly unitPrice: string
  readonly tax: string
}

/** A job's account for those who may see it, with what its forms begin with. */
export type AccountView = Omit<Account, 'prices' | 'payments'> & {
  readonly prices: readonly (AccountLine & { readonly typed: TypedLine })[]
  readonly payments: readonly (AccountPayment & { readonly by: string })[]
  /** What a line picks its tax from. */
  readonly taxPicks: readonly TaxPick[]
  /** What is owed, as it is typed; '' when nothing is. */
  readonly owedText: string
}

type With = {
  readonly taxPicks: readonly TaxPick[]
  readonly names: ReadonlyMap<string, string>
  readonly currencyExponent: number
}

export const accountView = (account: Account, { taxPicks, names, currencyExponent }: With): AccountView => ({
  ...account,
  prices: account.prices.map((line) => ({
    ...line,
    typed: {
      text: line.reason === '' ? line.text : line.reason,
      quantity: quantityText(line.quantityThousandths),
      unitPrice: formatAmount(Math.abs(line.unitMinor), currencyExponent),
      tax: taxField(line, taxPicks),
    },
  })),
  payments: account.payments.map((payment) => ({ ...payment, by: names.get(payment.byId) ?? '' })),
  taxPicks,
  owedText: account.dueMinor > 0 ? formatAmount(account.dueMinor, currencyExponent) : '',
})
