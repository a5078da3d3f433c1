import { seeVendors } from '@/lib/use-cases/vendors/see-vendors'
import { pageOf, type ListProps } from '@/lib/web/page-of'
import { requirePerson } from '@/lib/web/require-actor'
import { Register } from '../_components/register'

export const metadata = { title: 'Vendors' }

export default async function VendorsPage({ searchParams }: ListProps) {
  const page = pageOf((await searchParams).page)
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
      list={await seeVendors(actor, page)}
      page={page}
      nameOf={({ name }) => name}
      cellsOf={({ services, phone }) => ({ services, phone })}
      empty="No vendors yet. Add the companies you send heads to or buy parts from."
    />
  )
}
