import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from '../../_components/page-head'
import { AddVendorForm } from '../_components/vendor-forms'

export const metadata = { title: 'Add a vendor' }

export default async function AddVendorPage() {
  await requirePerson('vendor.change')
  return (
    <>
      <PageHead up={['/back-room/vendors', 'Vendors']} title="Add a vendor" />
      <AddVendorForm />
    </>
  )
}
