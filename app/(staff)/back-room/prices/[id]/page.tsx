import { seePriceItem } from '@/lib/use-cases/prices/see-price-list'
import { seeRules } from '@/lib/use-cases/rules/see-rules'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../../_components/back-link'
import { changedBy } from '../../_components/changed-by'
import { ActionButton } from '../../_components/action-button'
import { PriceForm } from '../_components/price-forms'
import { retirePriceItemAction } from '../actions'

export const metadata = { title: 'Price' }

export default async function PricePage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params
  const actor = await requirePerson('settings.change')
  const { item, last } = await orNotFound(seePriceItem(actor, id))
  const manner = await shopLocale()
  const { rules } = await seeRules(actor)
  const { version, retired } = item
  return (
    <>
      <div className="stack">
        <BackLink href="/back-room/prices">Prices</BackLink>
        <h1>{item.text}</h1>
        <p className="soft">
          {retired
            ? 'Retired: no price line is offered it, and the cut bench does not reckon with it.'
            : 'Lines that stand on jobs, and kept estimates, stay as they were said.'}
        </p>
      </div>
      <PriceForm
        item={item}
        rules={rules}
        currency={manner.currency}
        exponent={manner.currencyExponent}
        by={changedBy(last, manner)}
      />
      <section className="part" aria-labelledby="retire">
        <h2 id="retire">{retired ? 'Retired' : 'Retire'}</h2>
        <p>
          {retired
            ? 'Brought back, it is offered to price lines again.'
            : 'Takes it off the list. Lines that stand on jobs stay.'}
        </p>
        <ActionButton
          action={retirePriceItemAction}
          input={{ itemId: id, version, retired: !retired }}
          variant={retired ? 'plain' : 'stop'}
        >
          {retired ? 'Bring back' : 'Retire this price'}
        </ActionButton>
      </section>
    </>
  )
}
