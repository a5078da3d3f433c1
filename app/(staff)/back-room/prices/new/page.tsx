import { seeRules } from '@/lib/use-cases/rules/see-rules'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../../_components/back-link'
import { AddPriceForm } from '../_components/price-forms'

export const metadata = { title: 'Add a price' }

export default async function AddPricePage() {
  const actor = await requirePerson('settings.change')
  const { currency } = await shopLocale()
  const { rules } = await seeRules(actor)
  return (
    <>
      <div className="stack">
        <BackLink href="/back-room/prices">Prices</BackLink>
        <h1>Add a price</h1>
      </div>
      <AddPriceForm currency={currency} rules={rules} />
    </>
  )
}
