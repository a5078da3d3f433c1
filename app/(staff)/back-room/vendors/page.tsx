import Link from 'next/link'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { Table } from '@/app/_components/ui/table'
import { seeVendors, type VendorSeen } from '@/lib/use-cases/vendors/see-vendors'
import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../_components/back-link'

export const metadata = { title: 'Vendors' }

const columns = [
  { id: 'name', label: 'Name', head: true },
  { id: 'services', label: 'What they do for us' },
  { id: 'phone', label: 'Phone' },
]

const rowOf = (vendor: VendorSeen) => ({
  id: vendor.id,
  cells: {
    name: <Link href={`/back-room/vendors/${vendor.id}`}>{vendor.name}</Link>,
    services: vendor.retired ? 'retired' : vendor.services,
    phone: vendor.phone,
  },
})

export default async function VendorsPage() {
  const actor = await requirePerson('vendor.change')
  const vendors = await seeVendors(actor)
  return (
    <>
      <div className="stack">
        <BackLink href="/back-room">Back room</BackLink>
        <div className="row spread">
          <h1>Vendors</h1>
          <ButtonLink href="/back-room/vendors/new" variant="main">
            Add a vendor
          </ButtonLink>
        </div>
      </div>
      <Table
        label="Vendors"
        columns={columns}
        rows={vendors.map(rowOf)}
        empty={
          <EmptyState title="No vendors yet">
            <p>Add whoever does what the shop sends out; an outside order then names them.</p>
          </EmptyState>
        }
      />
    </>
  )
}
