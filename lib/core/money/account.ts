import { settled, totals, type Paid, type PricedLine, type TaxAtRate, type Totals } from './totals'

/** An invoice or a credit note as it was frozen, in minor units. */
export type Frozen = {
  readonly kind: 'invoice' | 'credit-note'
  readonly netMinor: number
  readonly taxMinor: number
  readonly taxes: readonly TaxAtRate[]
}

/**
 * What a job comes to, in minor units: its invoices, less its credit notes, and the lines that are on no invoice yet.
 * Example: an invoice of 314.00, a credit note of 14.00, nothing else charged, 130.00 paid → 170.00 due.
 */
export function jobTotals(open: readonly PricedLine[], papers: readonly Frozen[], paid: readonly Paid[]): Totals {
  const lines = totals(open, paid)
  const sign = ({ kind }: Frozen): number => (kind === 'invoice' ? 1 : -1)
  const sum = (of: (paper: Frozen) => number): number =>
    papers.reduce((total, paper) => total + sign(paper) * of(paper), 0)
  return settled(
    {
      netMinor: lines.netMinor + sum(({ netMinor }) => netMinor),
      taxMinor: lines.taxMinor + sum(({ taxMinor }) => taxMinor),
    },
    together([...papers.flatMap((paper) => paper.taxes.map((rate) => times(rate, sign(paper)))), ...lines.taxes]),
    paid,
  )
}

const times = (rate: TaxAtRate, sign: number): TaxAtRate => ({
  ...rate,
  netMinor: sign < 0 ? 0 - rate.netMinor : rate.netMinor,
  taxMinor: sign < 0 ? 0 - rate.taxMinor : rate.taxMinor,
})

/** Several papers' taxes, rate by rate: each was rounded on its own paper. */
function together(taxes: readonly TaxAtRate[]): TaxAtRate[] {
  const rates = new Map<string, TaxAtRate>()
  for (const rate of taxes) {
    const key = `${rate.rateMillionths} ${rate.name}`
    const before = rates.get(key)
    const added = { ...rate, netMinor: rate.netMinor + (before?.netMinor ?? 0) }
    rates.set(key, { ...added, taxMinor: rate.taxMinor + (before?.taxMinor ?? 0) })
  }
  return [...rates.values()]
}
