import { DefinitionList } from '@/app/_components/ui/definition-list'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { Money } from '@/app/_components/ui/money'
import { Table } from '@/app/_components/ui/table'
import { When } from '@/app/_components/ui/when'
import { ActionButton } from '@/app/(staff)/back-room/_components/action-button'
import { percentOf } from '@/lib/core/money/percent'
import type { JobView } from '@/lib/use-cases/jobs/see-job'
import { endPriceLineAction } from '../actions'
import { AddPrice } from './add-price'
import { TakePayment } from './take-payment'

type Props = { job: JobView; account: NonNullable<JobView['account']> }

const priceColumns = [
  { id: 'text', label: 'For', head: true },
  { id: 'quantity', label: 'Quantity', figure: true },
  { id: 'each', label: 'Each', figure: true },
  { id: 'tax', label: 'Tax', figure: true },
  { id: 'end', label: <span className="visually-hidden">Take off</span> },
]

const paymentColumns = [
  { id: 'kind', label: 'Kind', head: true },
  { id: 'at', label: 'When' },
  { id: 'how', label: 'How' },
  { id: 'amount', label: 'Amount', figure: true },
]

/** What it costs, what was paid, what is left to pay: the counter's and the owner's to see. */
export function AccountPart({ job, account }: Props) {
  const money = (minor: number) => <Money minor={minor} currency={job.currency} locale={job.locale} />
  return (
    <section className="part" aria-label="Prices and payments">
      <h2>Prices and payments</h2>
      <DefinitionList
        items={[
          { label: 'Total with tax', value: money(account.totalMinor) },
          { label: 'Tax in it', value: money(account.taxMinor) },
          { label: 'Paid', value: money(account.paidMinor) },
          {
            label: account.dueMinor < 0 ? 'We owe' : 'Balance to pay',
            value: money(Math.abs(account.dueMinor)),
          },
        ]}
      />
      <Table
        label="Price lines"
        caption
        columns={priceColumns}
        rows={account.prices.map((line) => ({
          id: line.id,
          cells: {
            text: line.text,
            quantity: line.quantity,
            each: money(line.unitMinor),
            tax: percentOf(line.taxBasisPoints),
            end: job.may.change && (
              <ActionButton action={endPriceLineAction} input={{ jobId: job.id, lineId: line.id }} variant="quiet">
                Take off<span className="visually-hidden"> {line.text}</span>
              </ActionButton>
            ),
          },
        }))}
        empty={
          <EmptyState title="No price lines yet">
            <p>Add what the customer was told it costs.</p>
          </EmptyState>
        }
      />
      <AddPrice jobId={job.id} currency={job.currency} list={job.priceList} />
      <Table
        label="Payments"
        caption
        columns={paymentColumns}
        rows={account.payments.map((payment) => ({
          id: payment.id,
          cells: {
            kind: payment.kind,
            at: <When at={payment.at} zone={job.timeZone} locale={job.locale} />,
            how: payment.how,
            amount: money(payment.kind === 'refund' ? -payment.minor : payment.minor),
          },
        }))}
        empty={
          <EmptyState title="Nothing paid yet">
            <p>A deposit or payment that you take stands here.</p>
          </EmptyState>
        }
      />
      <TakePayment jobId={job.id} currency={job.currency} />
    </section>
  )
}
