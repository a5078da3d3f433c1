import Link from 'next/link'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { Money } from '@/app/_components/ui/money'
import { Table } from '@/app/_components/ui/table'
import { can } from '@/lib/core/access/can'
import { percentOf } from '@/lib/core/money/percent'
import { seePriceList, type PriceItemSeen } from '@/lib/use-cases/prices/see-price-list'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../_components/back-link'

export const metadata = { title: 'Prices' }

const columns = [
  { id: 'text', label: 'For', head: true },
  { id: 'step', label: 'Step' },
  { id: 'price', label: 'One head', figure: true },
  { id: 'tax', label: 'Tax', figure: true },
]

type Manner = { readonly currency: string; readonly locale: string }

const rowOf = (item: PriceItemSeen, { currency, locale }: Manner, mayChange: boolean) => ({
  id: item.id,
  cells: {
    text: mayChange ? <Link href={`/back-room/prices/${item.id}`}>{item.text}</Link> : item.text,
    step: item.retired ? 'retired' : item.step || 'by hand',
    price: <Money minor={item.unitMinor} currency={currency} locale={locale} />,
    tax: percentOf(item.taxBasisPoints),
  },
})

export default async function PricesPage() {
  const actor = await requirePerson('price.see')
  const [items, manner] = await Promise.all([seePriceList(actor), shopLocale()])
  const mayChange = can(actor, 'settings.change')
  const inBackRoom = can(actor, 'back-room.see')
  return (
    <>
      <div className="stack">
        {inBackRoom && <BackLink href="/back-room">Back room</BackLink>}
        <div className="row spread">
          <h1>Prices</h1>
          {mayChange && (
            <ButtonLink href="/back-room/prices/new" variant="main">
              Add a price
            </ButtonLink>
          )}
        </div>
        <p className="soft">
          What the shop asks for one head. A price line of a job starts from it; the cut bench adds up the steps of a
          cut.
        </p>
      </div>
      <Table
        label="Prices"
        columns={columns}
        rows={items.map((item) => rowOf(item, manner, mayChange))}
        empty={
          <EmptyState title="No prices yet">
            <p>
              {mayChange
                ? 'Add what the shop charges for: price lines then take it from the list.'
                : 'The owner has put nothing on the list: price lines are typed in.'}
            </p>
          </EmptyState>
        }
      />
    </>
  )
}
