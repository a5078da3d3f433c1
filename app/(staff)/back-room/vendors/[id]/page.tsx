import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { seeVendor } from '@/lib/use-cases/vendors/see-vendors'
import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../../_components/back-link'
import { changedBy } from '../../_components/changed-by'
import { ActionButton } from '../../_components/action-button'
import { orNotFound } from '@/lib/web/or-not-found'
import { VendorForm } from '../_components/vendor-forms'
import { retireVendorAction } from '../actions'

export const metadata = { title: 'Vendor' }

export default async function VendorPage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params
  const actor = await requirePerson('vendor.change')
  const { vendor, last } = await orNotFound(seeVendor(actor, id))
  const manner = await shopLocale()
  const { version, retired } = vendor
  return (
    <>
      <div className="stack">
        <BackLink href="/back-room/vendors">Vendors</BackLink>
        <h1>{vendor.name}</h1>
        {retired && <p className="soft">Retired: no new order can name them.</p>}
      </div>
      <VendorForm vendor={vendor} by={changedBy(last, manner)} />
      <section className="part" aria-labelledby="retire">
        <h2 id="retire">{retired ? 'Retired' : 'Retire'}</h2>
        <p>
          {retired
            ? 'Taken back, they can be named on outside orders again.'
            : 'Takes them off the lists. What is out with them stays out and comes back as usual.'}
        </p>
        <ActionButton
          action={retireVendorAction}
          input={{ vendorId: id, version, retired: !retired }}
          variant={retired ? 'plain' : 'stop'}
        >
          {retired ? 'Take back' : 'Retire this vendor'}
        </ActionButton>
      </section>
    </>
  )
}
