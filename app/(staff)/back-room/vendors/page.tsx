import { seeVendors } from '@/lib/use-cases/vendors/see-vendors'
import { requirePerson } from '@/lib/web/require-actor'
import { Register } from '../_components/register'

export const metadata = { title: 'Vendors' }

export default async function VendorsPage() {
  const actor = await requirePerson('vendor.change')
  return (
    <Register
      title="Vendors"
      href="/back-room/vendors"
      add="Add a vendor"
      columns={[
        { id: 'name', label: 'Name' },
        { id: 'services', label: 'Services' },
        { id: 'phone', label: 'Phone' },
      ]}
      entries={await seeVendors(actor)}
      nameOf={({ name }) => name}
      cellsOf={({ services, phone }) => ({ services, phone })}
      empty="No vendors yet. Add the companies you send heads to or buy parts from."
    />
  )
}
