export type PricedLine = {
  readonly quantity: number
  readonly unitMinor: number
  /** Tax in hundredths of a per cent. */
  readonly taxBasisPoints: number
}
export type Paid = { readonly kind: 'deposit' | 'payment' | 'refund'; readonly minor: number }
export type Totals = {
  readonly netMinor: number
  readonly taxMinor: number
  readonly totalMinor: number
  readonly paidMinor: number
  /** What is still to pay; below zero when the shop owes money back. */
  readonly dueMinor: number
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

/** The one rounding of money: to the nearest minor unit, a half away from zero. */
export const roundMinor = (minor: number): number => Math.sign(minor) * Math.floor(Math.abs(minor) + 0.5)

/**
 * What a document comes to, in minor units. Tax is taken at each line's own rate and rounded once for the whole document,
 * so that many small lines do not gather rounding. Example: three lines of 0.33 at 8.25 % (825 basis points) carry
 * 0.99 × 0.0825 = 0.081675 → 0.08 of tax, where rounding each would have given 0.09.
 */
export function totals(lines: readonly PricedLine[], paid: readonly Paid[]): Totals {
  const netMinor = sum(lines.map((line) => line.quantity * line.unitMinor))
  const taxMinor = roundMinor(sum(lines.map((line) => line.quantity * line.unitMinor * line.taxBasisPoints)) / 10_000)
  const paidMinor = sum(paid.map((entry) => (entry.kind === 'refund' ? -entry.minor : entry.minor)))
  const totalMinor = netMinor + taxMinor
  return { netMinor, taxMinor, totalMinor, paidMinor, dueMinor: totalMinor - paidMinor }
}
