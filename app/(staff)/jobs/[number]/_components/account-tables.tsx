import { Link } from '@/app/_components/ui/link'
import { Money } from '@/app/_components/ui/money'
import { Table } from '@/app/_components/ui/table'
import { When } from '@/app/_components/ui/when'
import { taxWords } from '@/lib/core/money/percent'
import { lineWords } from '@/lib/core/money/price-of'
import { quantityText } from '@/lib/core/money/quantity'
import { lineNet } from '@/lib/core/money/totals'
import type { JobView } from '@/lib/use-cases/jobs/see-job'
import { howPaidWords, moneyPaperWords, paymentKindWords } from '@/lib/words/money'
import styles from './job.module.css'
import { ChangePrice, VoidPayment } from './openers'
import { moneyPaperHref } from './papers'

type Account = NonNullable<JobView['account']>
type Props = { job: JobView; account: Account }

const priceColumns = [
  { id: 'text', label: 'For', head: true },
  { id: 'quantity', label: 'Quantity', figure: true },
  { id: 'each', label: 'Each', figure: true },
  { id: 'tax', label: 'Tax', figure: true },
  { id: 'amount', label: 'Amount', figure: true },
  { id: 'invoice', label: 'Invoice' },
]

export function PriceTable({ job, account }: Props) {
  const money = moneyIn(job)
  const rows = account.prices.map((line) => {
    const form = { jobId: job.id, lineId: line.id, version: line.version, ...line.typed }
    const change = { ...form, name: lineWords(line), isDiscount: line.reason !== '' }
    return {
      id: line.id,
      cells: {
        text: <span className={styles.words}>{lineWords(line)}</span>,
        quantity: quantityText(line.quantityThousandths),
        each: money(line.unitMinor),
        tax: line.taxName === '' && line.taxMillionths === 0 ? 'none' : taxWords(line.taxName, line.taxMillionths),
        amount: money(lineNet(line)),
        invoice: line.invoice ? (
          <span className="nowrap">{line.invoice}</span>
        ) : (
          <ChangePrice key={line.version} line={change} currency={job.currency} taxes={account.taxPicks} />
        ),
      },
    }
  })
  return (
    <Table
      label="Price lines"
      stacks
      caption
      columns={priceColumns}
      rows={rows}
      empty={<p className="soft">No price lines yet. Add what the customer was told it costs.</p>}
    />
  )
}

const paperColumns = [
  { id: 'number', label: 'Number', head: true },
  { id: 'at', label: 'Date' },
  { id: 'what', label: 'What' },
  { id: 'total', label: 'Total', figure: true },
  { id: 'credit', label: <span className="visually-hidden">Credit</span> },
]

/** Invoices and the credit notes to them; nothing while there is none. */
export function InvoiceTable({ job, account }: Props) {
  if (account.papers.length === 0) return null
  const money = moneyIn(job)
  const numbers = new Map(account.papers.map(({ id, number }) => [id, number]))
  const rows = account.papers.map(({ id, kind, number, at, totalMinor, reason, invoiceId }) => ({
    id,
    cells: {
      number: (
        <a className="nowrap" href={moneyPaperHref(id)} target="_blank" rel="noreferrer">
          {number}
        </a>
      ),
      at: <When at={at} zone={job.timeZone} locale={job.locale} style="date" />,
      what: (
        <span className={styles.words}>
          {kind === 'invoice'
            ? moneyPaperWords[kind]
            : `${moneyPaperWords[kind]} to ${numbers.get(invoiceId ?? '') ?? ''}: ${reason}`}
        </span>
      ),
      total: money(kind === 'invoice' ? totalMinor : -totalMinor),
      credit: kind === 'invoice' && job.may.change && (
        <Link className="nowrap" href={`/jobs/${job.number}/credit/${id}`}>
          Write a credit note<span className="visually-hidden"> to {number}</span>
        </Link>
      ),
    },
  }))
  return <Table label="Invoices" stacks caption columns={paperColumns} rows={rows} />
}

const paymentColumns = [
  { id: 'kind', label: 'Kind', head: true },
  { id: 'at', label: 'When' },
  { id: 'by', label: 'Taken by' },
  { id: 'how', label: 'Paid by' },
  { id: 'amount', label: 'Amount', figure: true },
  { id: 'receipt', label: 'Receipt' },
  { id: 'void', label: <span className="visually-hidden">Void</span> },
]

export function PaymentTable({ job, account }: Props) {
  const money = moneyIn(job)
  const rows = account.payments.map(({ id, kind, minor, method, how, at, by, voided, receipt }) => ({
    id,
    cells: {
      kind: voided === null ? paymentKindWords[kind] : `${paymentKindWords[kind]}, voided: ${voided}`,
      at: <When at={at} zone={job.timeZone} locale={job.locale} />,
      by,
      how: howPaidWords(method, how),
      amount: voided === null ? money(signed(kind, minor)) : <s>{money(signed(kind, minor))}</s>,
      receipt: receipt && (
        <a className="nowrap" href={moneyPaperHref(receipt.id)} target="_blank" rel="noreferrer">
          {receipt.number}
        </a>
      ),
      void: voided === null && <VoidPayment paymentId={id} receipt={receipt?.number ?? ''} />,
    },
  }))
  return (
    <Table
      label="Payments"
      stacks
      caption
      columns={paymentColumns}
      rows={rows}
      empty={<p className="soft">Nothing paid yet.</p>}
    />
  )
}

const signed = (kind: string, minor: number): number => (kind === 'refund' ? -minor : minor)

const moneyIn =
  ({ currency, locale }: JobView) =>
  (minor: number) => <Money minor={minor} currency={currency} locale={locale} />
