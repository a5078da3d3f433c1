import { StaffShell } from '@/app/_components/staff-shell'
import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../../_components/back-link'
import { AddVendorForm } from '../_components/vendor-forms'

export const metadata = { title: 'Add a vendor' }

export default async function AddVendorPage() {
  const actor = await requirePerson('vendor.change', '/back-room/vendors/new')
  return (
    <StaffShell place="back-room" actor={actor}>
      <div className="stack">
        <BackLink href="/back-room/vendors">Vendors</BackLink>
        <h1>Add a vendor</h1>
      </div>
      <AddVendorForm />
    </StaffShell>
  )
}
