import { can } from '@/lib/core/access/can'
import { rateText } from '@/lib/core/money/percent'
import { seeTaxRates } from '@/lib/use-cases/taxes/see-tax-rates'
import { pageOf, type ListProps } from '@/lib/web/page-of'
import { requirePerson } from '@/lib/web/require-actor'
import { Register } from '../_components/register'

export const metadata = { title: 'Tax' }

export default async function TaxesPage({ searchParams }: ListProps) {
  const page = pageOf((await searchParams).page)
  const actor = await requirePerson('price.see')
  const mayChange = can(actor, 'settings.change')
  return (
    <Register
      title="Tax"
      href="/back-room/taxes"
      add={mayChange ? 'Add a tax' : undefined}
      note="Price lines pick their tax from here. Each tax is rounded once on an invoice."
      columns={[
        { id: 'name', label: 'Name' },
        { id: 'rate', label: 'Rate', figure: true },
        { id: 'first', label: 'New lines' },
      ]}
      list={await seeTaxRates(actor, page)}
      page={page}
      nameOf={({ name }) => name}
      opens={mayChange}
      cellsOf={({ rateMillionths, isDefault }) => ({
        rate: rateText(rateMillionths),
        first: isDefault ? 'start with it' : '',
      })}
      empty={mayChange ? 'No tax yet. Add the taxes that the shop charges.' : 'No tax yet. The owner adds them.'}
    />
  )
}
