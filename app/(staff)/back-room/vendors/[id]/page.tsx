import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { seeVendor } from '@/lib/use-cases/vendors/see-vendors'
import { changedBy } from '../../_components/changed-by'
import { entryPage } from '../../_components/entry-page'
import { PageHead } from '../../_components/page-head'
import { RetirePart } from '../../_components/retire-part'
import { VendorForm } from '../_components/vendor-forms'
import { retireVendorAction } from '../actions'

const page = entryPage('vendor.change', seeVendor, ({ vendor }) => vendor.name)

export const generateMetadata = page.generateMetadata

export default async function VendorPage(props: Parameters<typeof page.see>[0]) {
  const { vendor, last } = await page.see(props)
  return (
    <>
      <PageHead up={['/back-room/vendors', 'Vendors']} title={vendor.name}>
        {vendor.retired && <p className="soft">Retired: not offered for new orders.</p>}
      </PageHead>
      <VendorForm vendor={vendor} by={changedBy(last, await shopLocale())} />
      <RetirePart
        what="vendor"
        entry={vendor}
        idAs="vendorId"
        action={retireVendorAction}
        retire="No longer offered for new orders. Open orders stay open."
        restore="Offers them for new orders again."
      />
    </>
  )
}
