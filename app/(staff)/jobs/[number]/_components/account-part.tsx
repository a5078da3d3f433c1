import { ButtonLink } from '@/app/_components/ui/button-link'
import { DefinitionList } from '@/app/_components/ui/definition-list'
import { Money } from '@/app/_components/ui/money'
import { ActionButton } from '@/app/(staff)/back-room/_components/action-button'
import { percentOf } from '@/lib/core/money/percent'
import type { JobView } from '@/lib/use-cases/jobs/see-job'
import { balanceLabel } from '@/lib/words/money'
import { writeInvoiceAction } from '../actions'
import { AddDiscount, AddPrice } from './openers'
import { InvoiceTable, PaymentTable, PriceTable } from './account-tables'
import { nextMoneyStep } from './next-money-step'
import { TakePayment } from './take-payment'

type Props = { job: JobView; account: NonNullable<JobView['account']> }

/** What it costs, what was paid, what is left to pay: the counter's and the owner's to see. */
export function AccountPart({ job, account }: Props) {
  const money = (minor: number) => <Money minor={minor} currency={job.currency} locale={job.locale} />
  const next = nextMoneyStep(job, account)
  return (
    <section className="part" aria-label="Prices and payments">
      <div className="row spread">
        <h2>Prices and payments</h2>
        {account.prices.some(({ invoice }) => invoice === null) && (
          <ActionButton
            action={writeInvoiceAction}
            input={{ jobId: job.id, seenMinor: account.openMinor }}
            variant={next === 'invoice' ? 'main' : 'plain'}
          >
            Invoice {money(account.openMinor)}
          </ActionButton>
        )}
        {next === 'hand-over' && (
          <ButtonLink href={`/jobs/${job.number}/hand-over`} variant="main">
            Hand over
          </ButtonLink>
        )}
      </div>
      <DefinitionList
        close
        items={[
          { label: 'Total with tax', value: money(account.totalMinor) },
          ...account.taxes.map((rate) => ({
            label: `${rate.name === '' ? 'Tax' : rate.name} in it, ${percentOf(rate.rateMillionths)}`,
            value: money(rate.taxMinor),
          })),
          { label: 'Paid', value: money(account.paidMinor) },
          { label: balanceLabel(account.balance), value: money(account.balance.minor) },
        ]}
      />
      <PriceTable job={job} account={account} />
      {job.may.change && (
        <>
          <AddPrice jobId={job.id} currency={job.currency} list={job.priceList} taxes={account.taxPicks} />
          <AddDiscount jobId={job.id} currency={job.currency} taxes={account.taxPicks} />
        </>
      )}
      <InvoiceTable job={job} account={account} />
      <PaymentTable job={job} account={account} />
      <TakePayment jobId={job.id} currency={job.currency} owed={account.owedText} isNext={next === 'payment'} />
    </section>
  )
}
