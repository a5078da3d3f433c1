import { formatAmount } from './amount'
import type { CsvCell } from './csv'
import type { MoneyFacts } from './paper-facts'
import { taxText } from './percent'

/** How figures and days of the books are written. */
export type BooksManner = {
  readonly currencyExponent: number
  /** The day of a moment in the shop's zone, "2026-03-02". */
  readonly dayOf: (at: Date) => string
}

/** An amount as a spreadsheet reads it: a decimal point, no groups. Example: −1250 minor units of two decimals → "-12.50". */
export const figureCell = (minor: number, exponent: number): CsvCell => ({
  figure: `${minor < 0 ? '-' : ''}${formatAmount(Math.abs(minor), exponent)}`,
})

type Table = readonly (readonly CsvCell[])[]

const signOf = ({ kind }: MoneyFacts): number => (kind === 'credit-note' ? -1 : 1)

/** Invoices and credit notes, a line each; credit notes below zero. Amounts in the currency's unit. */
export function invoiceRows(papers: readonly MoneyFacts[], { currencyExponent, dayOf }: BooksManner): Table {
  const head = ['Number', 'Kind', 'Date', 'Job', 'Customer', 'To invoice', 'Net', 'Tax', 'Total', 'Currency', 'Reason']
  const rows = papers.map((paper): CsvCell[] => {
    const amount = (minor: number) => figureCell(signOf(paper) * minor, currencyExponent)
    return [
      paper.number,
      paper.kind === 'invoice' ? 'invoice' : 'credit note',
      dayOf(new Date(paper.at)),
      paper.jobNumber,
      paper.customer.name,
      paper.of,
      amount(paper.netMinor),
      amount(paper.taxMinor),
      amount(paper.totalMinor),
      paper.currency,
      paper.reason,
    ]
  })
  return [head, ...rows]
}

export type BookPayment = {
  readonly receipt: string
  readonly at: Date
  readonly jobNumber: string
  readonly customer: string
  readonly kind: string
  readonly method: string
  readonly note: string
  /** Below zero: paid back. */
  readonly minor: number
  readonly takenBy: string
  /** Why it does not count; '': it does. */
  readonly voided: string
}

/** Payments, a line each; what does not count has 0 as its amount and says why. */
export function paymentRows(payments: readonly BookPayment[], { currencyExponent, dayOf }: BooksManner): Table {
  const head = ['Receipt', 'Date', 'Job', 'Customer', 'Kind', 'Paid by', 'Note', 'Amount', 'Taken by', 'Voided']
  const rows = payments.map((payment): CsvCell[] => [
    payment.receipt,
    dayOf(payment.at),
    payment.jobNumber,
    payment.customer,
    payment.kind,
    payment.method,
    payment.note,
    figureCell(payment.voided === '' ? payment.minor : 0, currencyExponent),
    payment.takenBy,
    payment.voided,
  ])
  return [head, ...rows]
}

/** Tax by month, customer and rate: invoices less credit notes, in the order of months and names. */
export function taxRows(papers: readonly MoneyFacts[], { currencyExponent, dayOf }: BooksManner): Table {
  const head = ['Month', 'Customer', 'Tax', 'Rate %', 'Net', 'Tax amount']
  const sums = new Map<string, { key: readonly string[]; netMinor: number; taxMinor: number }>()
  for (const paper of papers) {
    const [month, sign] = [dayOf(new Date(paper.at)).slice(0, 7), signOf(paper)]
    for (const rate of [...paper.taxes, untaxed(paper)]) {
      if (rate.netMinor === 0 && rate.taxMinor === 0) continue
      const key = [month, paper.customer.name, rate.name, taxText(rate.rateMillionths) || '0']
      const before = sums.get(key.join('\n'))
      sums.set(key.join('\n'), {
        key,
        netMinor: (before?.netMinor ?? 0) + sign * rate.netMinor,
        taxMinor: (before?.taxMinor ?? 0) + sign * rate.taxMinor,
      })
    }
  }
  const rows = [...sums.entries()]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([, { key, netMinor, taxMinor }]): CsvCell[] => {
      const [month = '', customer = '', name = '', rate = ''] = key
      const amounts = [figureCell(netMinor, currencyExponent), figureCell(taxMinor, currencyExponent)]
      return [month, customer, name, { figure: rate }, ...amounts]
    })
  return [head, ...rows]
}

/** What of a paper is under no tax at all. */
const untaxed = ({ netMinor, taxes }: MoneyFacts) => ({
  name: '',
  rateMillionths: 0,
  netMinor: netMinor - taxes.reduce((sum, rate) => sum + rate.netMinor, 0),
  taxMinor: 0,
})
