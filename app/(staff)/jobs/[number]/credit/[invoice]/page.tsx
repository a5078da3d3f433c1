import type { Metadata } from 'next'
import { Link } from '@/app/_components/ui/link'
import { DefinitionList } from '@/app/_components/ui/definition-list'
import { Money } from '@/app/_components/ui/money'
import { When } from '@/app/_components/ui/when'
import { seeInvoice } from '@/lib/use-cases/money/see-invoice'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'
import { CreditForm } from './credit-form'

type Props = { params: Promise<{ number: string; invoice: string }> }

export const metadata: Metadata = { title: 'Credit note' }

export default async function CreditPage({ params }: Props) {
  const { invoice: id } = await params
  const actor = await requirePerson('invoice.write')
  const invoice = await orNotFound(seeInvoice(actor, id))
  const money = (minor: number) => <Money minor={minor} currency={invoice.currency} locale={invoice.locale} />
  return (
    <>
      <h1>
        Credit note to {invoice.number}, job <Link href={`/jobs/${invoice.jobNumber}`}>{invoice.jobNumber}</Link>
      </h1>
      <DefinitionList
        items={[
          { label: 'Customer', value: invoice.customer },
          {
            label: 'Invoiced',
            value: <When at={invoice.at} zone={invoice.timeZone} locale={invoice.locale} style="date" />,
          },
          { label: 'Invoice, with tax', value: money(invoice.totalMinor) },
          { label: 'Credited so far', value: money(invoice.creditedMinor) },
        ]}
      />
      <p className="soft">
        An invoice does not change. A credit note takes back part of it, or all of it; what is charged anew goes on a
        new price line and a new invoice.
      </p>
      <CreditForm invoice={invoice} />
    </>
  )
}
