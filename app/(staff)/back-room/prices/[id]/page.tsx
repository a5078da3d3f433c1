import { cache } from 'react'
import { seePriceItem } from '@/lib/use-cases/prices/see-price-list'
import { seeTaxPicks } from '@/lib/use-cases/taxes/see-tax-rates'
import { seeRules } from '@/lib/use-cases/rules/see-rules'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'
import { changedBy } from '../../_components/changed-by'
import { PageHead } from '../../_components/page-head'
import { RetirePart } from '../../_components/retire-part'
import { PriceForm } from '../_components/price-forms'
import { retirePriceItemAction } from '../actions'

type Props = { params: Promise<{ id: string }> }

const see = cache(async (id: string) => {
  const actor = await requirePerson('settings.change')
  return { actor, ...(await orNotFound(seePriceItem(actor, id))) }
})

export async function generateMetadata({ params }: Props) {
  return { title: `Price: ${(await see((await params).id)).item.text}` }
}

export default async function PricePage({ params }: Props) {
  const { actor, item, last } = await see((await params).id)
  const [manner, { rules }, taxes] = await Promise.all([shopLocale(), seeRules(actor), seeTaxPicks(actor)])
  const { id: itemId, version, retired } = item
  return (
    <>
      <PageHead up={['/back-room/prices', 'Prices']} title={item.text}>
        <p className="soft">
          {retired
            ? 'Retired: not offered for price lines and not used by the cut bench.'
            : 'A change applies to new price lines. Price lines already on jobs and saved estimates keep their amounts.'}
        </p>
      </PageHead>
      <PriceForm
        item={item}
        rules={rules}
        taxes={taxes}
        currency={manner.currency}
        exponent={manner.currencyExponent}
        by={changedBy(last, manner)}
      />
      <RetirePart
        what="price"
        retired={retired}
        action={retirePriceItemAction}
        entry={{ itemId, version }}
        retire="No longer offered for price lines. Lines already on jobs stay."
        restore="Offers it for price lines again."
      />
    </>
  )
}
