import { seeRules } from '@/lib/use-cases/rules/see-rules'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { seeTaxPicks } from '@/lib/use-cases/taxes/see-tax-rates'
import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from '../../_components/page-head'
import { AddPriceForm } from '../_components/price-forms'

export const metadata = { title: 'Add a price' }

export default async function AddPricePage() {
  const actor = await requirePerson('settings.change')
  const [{ currency }, { rules }, taxes] = await Promise.all([shopLocale(), seeRules(actor), seeTaxPicks(actor)])
  return (
    <>
      <PageHead up={['/back-room/prices', 'Prices']} title="Add a price" />
      <AddPriceForm currency={currency} rules={rules} taxes={taxes} />
    </>
  )
}
