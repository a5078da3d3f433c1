import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { seeTaxRate } from '@/lib/use-cases/taxes/see-tax-rates'
import { changedBy } from '../../_components/changed-by'
import { entryPage } from '../../_components/entry-page'
import { PageHead } from '../../_components/page-head'
import { RetirePart } from '../../_components/retire-part'
import { TaxForm } from '../_components/tax-forms'
import { retireTaxRateAction } from '../actions'

const page = entryPage('settings.change', seeTaxRate, ({ rate }) => `Tax: ${rate.name}`)

export const generateMetadata = page.generateMetadata

export default async function TaxPage(props: Parameters<typeof page.see>[0]) {
  const { rate, last } = await page.see(props)
  return (
    <>
      <PageHead up={['/back-room/taxes', 'Tax']} title={rate.name}>
        <p className="soft">
          A change applies to new price lines and the price list. Lines on jobs and invoices keep the rate they have.
        </p>
      </PageHead>
      <TaxForm rate={rate} by={changedBy(last, await shopLocale())} />
      <RetirePart
        what="tax"
        entry={rate}
        idAs="rateId"
        action={retireTaxRateAction}
        retire="No longer offered for price lines. Lines already on jobs keep it."
        restore="Offers it for price lines again."
      />
    </>
  )
}
