import { cache } from 'react'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { seeVendor } from '@/lib/use-cases/vendors/see-vendors'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'
import { changedBy } from '../../_components/changed-by'
import { PageHead } from '../../_components/page-head'
import { RetirePart } from '../../_components/retire-part'
import { VendorForm } from '../_components/vendor-forms'
import { retireVendorAction } from '../actions'

type Props = { params: Promise<{ id: string }> }

const see = cache(async (id: string) => orNotFound(seeVendor(await requirePerson('vendor.change'), id)))

export async function generateMetadata({ params }: Props) {
  return { title: (await see((await params).id)).vendor.name }
}

export default async function VendorPage({ params }: Props) {
  const { vendor, last } = await see((await params).id)
  const { id: vendorId, version, retired } = vendor
  return (
    <>
      <PageHead up={['/back-room/vendors', 'Vendors']} title={vendor.name}>
        {retired && <p className="soft">Retired: not offered for new orders.</p>}
      </PageHead>
      <VendorForm vendor={vendor} by={changedBy(last, await shopLocale())} />
      <RetirePart
        what="vendor"
        retired={retired}
        action={retireVendorAction}
        entry={{ vendorId, version }}
        retire="No longer offered for new orders. Open orders stay open."
        restore="Offers them for new orders again."
      />
    </>
  )
}
