import { ok, type Result } from '../errors'
import { parseAmount, type AmountManner } from './amount'
import { parsePercent } from './percent'
import type { LineTax } from './price-of'
import { parseQuantity } from './quantity'
import { totals, type PricedLine, type Totals } from './totals'

/** A price line as it stands in a form. `tax`: the value of one of the shop's rates, or a percentage. */
export type TypedPrice = {
  readonly text: string
  readonly quantity: string
  readonly unitPrice: string
  readonly tax: string
}
export type NamedTax = LineTax & { readonly value: string }

export type TypedTotal = {
  readonly totals: Totals
  /** How many lines cannot be read yet, and are not in it. */
  readonly unread: number
}

/**
 * What price lines and a deposit come to while they are typed, in minor units: `totals` of those that can be read.
 *
 * @param deposit as typed; '' or unreadable: none yet
 * @param taxes the shop's rates by the value that a form's field has
 * @returns the totals, and how many lines are left out because quantity, amount or tax cannot be read yet
 *
 * Derived: `parseQuantity`, `parseAmount`, `parsePercent`, then `totals`. Example: "2" at "95.50", tax "8.25" and a deposit
 * of "100" → 191.00 net, 15.76 tax, 206.76 in all, 106.76 to pay.
 */
export function typedTotal(
  lines: readonly TypedPrice[],
  deposit: string,
  taxes: readonly NamedTax[],
  manner: AmountManner,
): TypedTotal {
  const read = lines.map((line) => readLine(line, taxes, manner))
  const known = read.flatMap((line) => (line.ok ? [line.value] : []))
  const paid = parseAmount(deposit, manner)
  return {
    totals: totals(known, paid.ok ? [{ kind: 'deposit', minor: paid.value }] : []),
    unread: read.length - known.length,
  }
}

function readLine(line: TypedPrice, taxes: readonly NamedTax[], manner: AmountManner): Result<PricedLine> {
  const quantityThousandths = parseQuantity(line.quantity)
  if (!quantityThousandths.ok) return quantityThousandths
  const unitMinor = parseAmount(line.unitPrice, manner)
  if (!unitMinor.ok) return unitMinor
  const tax = taxOf(line.tax, taxes)
  if (!tax.ok) return tax
  return ok({ quantityThousandths: quantityThousandths.value, unitMinor: unitMinor.value, ...tax.value })
}

function taxOf(typed: string, taxes: readonly NamedTax[]): Result<LineTax> {
  const named = taxes.find(({ value }) => value === typed)
  if (named) return ok({ taxName: named.taxName, taxMillionths: named.taxMillionths })
  const percent = parsePercent(typed)
  return percent.ok ? ok({ taxName: '', taxMillionths: percent.value }) : percent
}
