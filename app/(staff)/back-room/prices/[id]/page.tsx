import { seePriceItem } from '@/lib/use-cases/prices/see-price-list'
import { seeTaxPicks } from '@/lib/use-cases/taxes/see-tax-rates'
import { seeRules } from '@/lib/use-cases/rules/see-rules'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { changedBy } from '../../_components/changed-by'
import { entryPage } from '../../_components/entry-page'
import { PageHead } from '../../_components/page-head'
import { RetirePart } from '../../_components/retire-part'
import { PriceForm } from '../_components/price-forms'
import { retirePriceItemAction } from '../actions'

const page = entryPage('settings.change', seePriceItem, ({ item }) => `Price: ${item.text}`)

export const generateMetadata = page.generateMetadata

export default async function PricePage(props: Parameters<typeof page.see>[0]) {
  const { actor, item, last } = await page.see(props)
  const [manner, { rules }, taxes] = await Promise.all([shopLocale(), seeRules(actor), seeTaxPicks(actor)])
  return (
    <>
      <PageHead up={['/back-room/prices', 'Prices']} title={item.text}>
        <p className="soft">
          {item.retired
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
        entry={item}
        idAs="itemId"
        action={retirePriceItemAction}
        retire="No longer offered for price lines. Lines already on jobs stay."
        restore="Offers it for price lines again."
      />
    </>
  )
}
