import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../../_components/back-link'
import { AddVendorForm } from '../_components/vendor-forms'

export const metadata = { title: 'Add a vendor' }

export default async function AddVendorPage() {
  await requirePerson('vendor.change')
  return (
    <>
      <div className="stack">
        <BackLink href="/back-room/vendors">Vendors</BackLink>
        <h1>Add a vendor</h1>
      </div>
      <AddVendorForm />
    </>
  )
}
