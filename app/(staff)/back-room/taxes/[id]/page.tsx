import { cache } from 'react'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { seeTaxRate } from '@/lib/use-cases/taxes/see-tax-rates'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'
import { changedBy } from '../../_components/changed-by'
import { PageHead } from '../../_components/page-head'
import { RetirePart } from '../../_components/retire-part'
import { TaxForm } from '../_components/tax-forms'
import { retireTaxRateAction } from '../actions'

type Props = { params: Promise<{ id: string }> }

const see = cache(async (id: string) => orNotFound(seeTaxRate(await requirePerson('settings.change'), id)))

export async function generateMetadata({ params }: Props) {
  return { title: `Tax: ${(await see((await params).id)).rate.name}` }
}

export default async function TaxPage({ params }: Props) {
  const { rate, last } = await see((await params).id)
  const { id: rateId, version, retired } = rate
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
        retired={retired}
        action={retireTaxRateAction}
        entry={{ rateId, version }}
        retire="No longer offered for price lines. Lines already on jobs keep it."
        restore="Offers it for price lines again."
      />
    </>
  )
}
