export type PricedLine = {
  /** 1.5 hours is 1500. */
  readonly quantityThousandths: number
  /** Below zero: a discount. */
  readonly unitMinor: number
  /** Rate of the tax in millionths: 8.875 % is 88750. */
  readonly taxMillionths: number
  /** The tax by its name; left out or '': a rate without one. */
  readonly taxName?: string
}
export type Paid = { readonly kind: 'deposit' | 'payment' | 'refund'; readonly minor: number }
/** What is taxed at one rate, and the tax on it. */
export type TaxAtRate = {
  readonly name: string
  readonly rateMillionths: number
  readonly netMinor: number
  readonly taxMinor: number
}
export type Totals = {
  readonly netMinor: number
  /** Rate by rate, in the order of the lines; lines without tax are in none. */
  readonly taxes: readonly TaxAtRate[]
  readonly taxMinor: number
  readonly totalMinor: number
  readonly paidMinor: number
  /** What is still to pay; below zero when the shop owes money back. */
  readonly dueMinor: number
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

/** The one rounding of money: to the nearest minor unit, a half away from zero. */
export const roundMinor = (minor: number): number => Math.sign(minor) * Math.floor(Math.abs(minor) + 0.5)

/** a · b / c of whole numbers, rounded once, a half away from zero: exact also where a · b is beyond a double. */
function shareOf(a: number, b: number, c: number): number {
  const product = BigInt(a) * BigInt(b)
  const size = product < 0n ? -product : product
  const rounded = Number((2n * size + BigInt(c)) / (2n * BigInt(c)))
  return product < 0n ? 0 - rounded : rounded
}

/**
 * What one line comes to without tax, in minor units: quantity × price, rounded to the minor unit so that the amounts that
 * are printed add up to the sum that is printed.
 * Example: 1.5 h (1500) at 95.01 → 142.515 → 14252.
 * Source: common practice (a line's amount is shown in whole cents).
 */
export const lineNet = ({ quantityThousandths, unitMinor }: Omit<PricedLine, 'taxMillionths'>): number =>
  shareOf(quantityThousandths, unitMinor, 1000)

/**
 * The tax on an amount at a rate in millionths, in minor units: amount × rate / 1,000,000, a half away from zero.
 * Example: 0.99 at 8.25 % → 0.081675 → 8.
 * Source: Rhode Island General Laws § 44-18.1-25 (Streamlined Sales and Use Tax Agreement, section 324, rounding rule): tax is
 * rounded to a whole cent, up whenever the third decimal place is greater than four. Below zero: the same size, common practice.
 */
export const taxOn = (netMinor: number, rateMillionths: number): number => shareOf(netMinor, rateMillionths, 1_000_000)

/**
 * What a document comes to, in minor units: the one function for estimate, job, invoice, receipt and customer's page. Lines
 * are taxed at their own rate; the tax is rounded once a rate for the whole document and not line by line, so that many small
 * lines do not gather rounding.
 * Example: three lines of 0.33 at 8.25 % carry 0.99 × 0.0825 = 0.081675 → 0.08 of tax; rounding each would have given 0.09.
 * Source: as `taxOn`, which lets a seller compute the tax on an invoice basis.
 */
export function totals(lines: readonly PricedLine[], paid: readonly Paid[]): Totals {
  const taxes = taxesOf(lines)
  return settled(
    { netMinor: sum(lines.map(lineNet)), taxMinor: sum(taxes.map(({ taxMinor }) => taxMinor)) },
    taxes,
    paid,
  )
}

/** Sums that are known, and what was paid of them: how several documents of one job come together. */
export function settled(
  { netMinor, taxMinor }: Pick<Totals, 'netMinor' | 'taxMinor'>,
  taxes: readonly TaxAtRate[],
  paid: readonly Paid[],
): Totals {
  const paidMinor = paidOf(paid)
  const totalMinor = netMinor + taxMinor
  return { netMinor, taxes, taxMinor, totalMinor, paidMinor, dueMinor: totalMinor - paidMinor }
}

/** What was paid in all: deposits and payments, less what was paid back. */
export const paidOf = (paid: readonly Paid[]): number =>
  sum(paid.map(({ kind, minor }) => (kind === 'refund' ? -minor : minor)))

function taxesOf(lines: readonly PricedLine[]): TaxAtRate[] {
  const rates = new Map<string, { name: string; rateMillionths: number; netMinor: number }>()
  for (const line of lines) {
    const { taxMillionths: rateMillionths, taxName: name = '' } = line
    if (rateMillionths === 0 && name === '') continue
    const key = `${rateMillionths} ${name}`
    const rate = rates.get(key) ?? { name, rateMillionths, netMinor: 0 }
    rates.set(key, { ...rate, netMinor: rate.netMinor + lineNet(line) })
  }
  return [...rates.values()].map((rate) => ({ ...rate, taxMinor: taxOn(rate.netMinor, rate.rateMillionths) }))
}
