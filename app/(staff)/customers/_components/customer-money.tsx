import { Link } from '@/app/_components/ui/link'
import { PaperLink } from '@/app/_components/papers/paper-link'
import { Money } from '@/app/_components/ui/money'
import { Table } from '@/app/_components/ui/table'
import { When } from '@/app/_components/ui/when'
import type { CustomerMoney as MoneySeen, CustomerView } from '@/lib/use-cases/customers/see-customer'
import { howPaidWords, moneyPaperWords, paymentKindWords } from '@/lib/words/money'

const columns = [
  { id: 'at', label: 'Date' },
  { id: 'what', label: 'What', head: true },
  { id: 'job', label: 'Job' },
  { id: 'amount', label: 'Amount', figure: true },
]

/** Invoices, credit notes, receipts and payments of these jobs. */
export function CustomerMoney({ customer, money }: { customer: CustomerView; money: MoneySeen }) {
  const { timeZone, locale, currency } = customer
  const day = (at: Date) => <When at={at} zone={timeZone} locale={locale} style="date" />
  const amount = (minor: number) => <Money minor={minor} currency={currency} locale={locale} />
  const job = (number: string) => (
    <Link href={`/jobs/${number}`} className="nowrap">
      {number}
    </Link>
  )
  return (
    <section aria-label="Money">
      <h2>Money</h2>
      <Table
        label="Payments"
        columns={columns}
        rows={money.payments.map((payment) => ({
          id: payment.id,
          cells: {
            at: day(payment.at),
            what: `${paymentKindWords[payment.kind]}, ${howPaidWords(payment.method, payment.note)}${payment.voided ? ', voided' : ''}`,
            job: job(payment.jobNumber),
            amount: payment.voided ? <s>{amount(payment.minor)}</s> : amount(payment.minor),
          },
        }))}
        empty={<p className="soft">No payment yet.</p>}
      />
      {money.papers.length > 0 && (
        <Table
          label="Invoices and receipts"
          columns={columns}
          rows={money.papers.map((paper) => ({
            id: paper.id,
            cells: {
              at: day(paper.at),
              what: (
                <PaperLink href={`/api/papers/money/${paper.id}`} pages={1}>
                  {`${moneyPaperWords[paper.kind]} ${paper.number}`}
                </PaperLink>
              ),
              job: job(paper.jobNumber),
              amount: amount(paper.minor),
            },
          }))}
        />
      )}
    </section>
  )
}
