import { ok, refuse, type Result } from '../errors'
import { lineNet, taxOn, type PricedLine, type TaxAtRate } from './totals'

/** A line of an invoice, and how much of it a credit note takes back; in minor units, without tax, with the line's sign. */
export type CreditedLine = { readonly line: number; readonly netMinor: number }
export type Credit = {
  readonly lines: readonly CreditedLine[]
  readonly taxes: readonly TaxAtRate[]
  readonly netMinor: number
  readonly taxMinor: number
  readonly totalMinor: number
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

/** What is not credited yet of each line of an invoice, without tax, in minor units. Example: 240.00 less 40.00 → 20000. */
export const creditLeft = (lines: readonly PricedLine[], before: readonly CreditedLine[]): readonly number[] =>
  lines.map((line, at) => lineNet(line) - creditedOf(before, at))

const creditedOf = (credited: readonly CreditedLine[], at: number): number =>
  sum(credited.filter(({ line }) => line === at).map(({ netMinor }) => netMinor))

/**
 * A credit note: what is taken back of an invoice's lines, and the tax on it, in minor units. The tax at a rate is that on all
 * that was ever credited at it, less what earlier notes gave back, so that notes never return more tax than the invoice asked
 * and together return all of it.
 * @param before what earlier notes took back
 * @returns refused as `invalid` when it takes more than a line, a rate or the invoice has left, or nothing
 * Example: an invoice of 100.00 + 8.25 % and a note for 40.00 → 40.00 + 3.30 = 4330.
 * Derived: round(r · (c₁ + … + cₙ)) − round(r · (c₁ + … + cₙ₋₁)) sums to round(r · Σc).
 */
export function creditOf(
  invoice: readonly PricedLine[],
  before: readonly CreditedLine[],
  asked: readonly CreditedLine[],
): Result<Credit> {
  const lines = asked.filter(({ netMinor }) => netMinor !== 0)
  const left = creditLeft(invoice, before)
  const over = lines.find(({ line, netMinor }) => isMore(netMinor, left[line] ?? 0))
  if (over) return wrong(over.line, 'This is more than is left of the line.')
  const all = [...before, ...lines]
  const taxes = taxesOf(invoice, all).map((rate, at) => minus(rate, taxesOf(invoice, before)[at]))
  const netMinor = sum(lines.map((line) => line.netMinor))
  const taxMinor = sum(taxes.map((rate) => rate.taxMinor))
  if (netMinor + taxMinor <= 0) return refuse('invalid', 'Enter what to credit. The note must come to more than zero.')
  if (!fits(invoice, all)) return refuse('invalid', 'The credit notes would come to more than the invoice.')
  return ok({ lines, taxes: taxes.filter(isSomething), netMinor, taxMinor, totalMinor: netMinor + taxMinor })
}

const wrong = (line: number, message: string) =>
  refuse('invalid', message, { fields: { [`amounts.${line}`]: message } })

/** More than is left, or of the other sign. */
const isMore = (asked: number, left: number): boolean =>
  Math.sign(asked) !== Math.sign(left) || Math.abs(asked) > Math.abs(left)

const isSomething = ({ netMinor, taxMinor }: TaxAtRate): boolean => netMinor !== 0 || taxMinor !== 0

/** All credits together stay within the invoice: in the sum, and at each rate, also where a discount lowers it. */
function fits(invoice: readonly PricedLine[], credited: readonly CreditedLine[]): boolean {
  const whole = invoice.map((line, at) => ({ line: at, netMinor: lineNet(line) }))
  const [most, taken] = [ratesOf(invoice, whole), ratesOf(invoice, credited)]
  const isWithin = (a: number, b: number): boolean =>
    a === 0 || (Math.sign(a) === Math.sign(b) && Math.abs(a) <= Math.abs(b))
  return (
    taken.every((rate, at) => isWithin(rate.netMinor, most[at]?.netMinor ?? 0)) &&
    sum(taken.map(totalOf)) <= sum(most.map(totalOf))
  )
}

const totalOf = ({ netMinor, taxMinor }: TaxAtRate): number => netMinor + taxMinor

const minus = (rate: TaxAtRate, before: TaxAtRate | undefined): TaxAtRate => ({
  ...rate,
  netMinor: rate.netMinor - (before?.netMinor ?? 0),
  taxMinor: rate.taxMinor - (before?.taxMinor ?? 0),
})

const taxesOf = (invoice: readonly PricedLine[], credited: readonly CreditedLine[]): TaxAtRate[] =>
  ratesOf(invoice, credited).filter(({ rateMillionths, name }) => rateMillionths !== 0 || name !== '')

/** Every rate of the invoice, in the order of its lines, with what is credited at it; the untaxed lines too. */
function ratesOf(invoice: readonly PricedLine[], credited: readonly CreditedLine[]): TaxAtRate[] {
  const rates = new Map<string, TaxAtRate>()
  invoice.forEach(({ taxMillionths: rateMillionths, taxName: name = '' }, at) => {
    const key = `${rateMillionths} ${name}`
    const netMinor = (rates.get(key)?.netMinor ?? 0) + creditedOf(credited, at)
    rates.set(key, { name, rateMillionths, netMinor, taxMinor: taxOn(netMinor, rateMillionths) })
  })
  return [...rates.values()]
}
