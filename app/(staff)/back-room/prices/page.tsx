import { Money } from '@/app/_components/ui/money'
import { can } from '@/lib/core/access/can'
import { taxWords } from '@/lib/core/money/percent'
import { seePriceList } from '@/lib/use-cases/prices/see-price-list'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { pageOf, type ListProps } from '@/lib/web/page-of'
import { requirePerson } from '@/lib/web/require-actor'
import { Register } from '../_components/register'

export const metadata = { title: 'Prices' }

export default async function PricesPage({ searchParams }: ListProps) {
  const page = pageOf((await searchParams).page)
  const actor = await requirePerson('price.see')
  const [list, { currency, locale }] = await Promise.all([seePriceList(actor, page), shopLocale()])
  const mayChange = can(actor, 'settings.change')
  return (
    <Register
      title="Prices"
      href="/back-room/prices"
      add={mayChange ? 'Add a price' : undefined}
      note="Prices per head, offered for a job’s price lines. The cut bench adds up the steps of a cut."
      columns={[
        { id: 'text', label: 'For' },
        { id: 'step', label: 'Step' },
        { id: 'price', label: 'Per head', figure: true },
        { id: 'tax', label: 'Tax', figure: true },
      ]}
      list={list}
      page={page}
      nameOf={({ text }) => text}
      opens={mayChange}
      cellsOf={({ step, unitMinor, taxName, taxMillionths }) => ({
        step: step || 'none',
        price: <Money minor={unitMinor} currency={currency} locale={locale} />,
        tax: taxWords(taxName, taxMillionths),
      })}
      empty={mayChange ? 'No prices yet. Add what the shop charges for.' : 'No prices yet. The owner adds them.'}
    />
  )
}
