import { changedBy } from '@/app/(staff)/back-room/_components/changed-by'
import { PageHead } from '@/app/(staff)/back-room/_components/page-head'
import { seeCustomer } from '@/lib/use-cases/customers/see-customer'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'
import { CustomerForm } from '../../_components/customer-form'

export const metadata = { title: 'Change a customer' }

export default async function ChangeCustomerPage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params
  const customer = await orNotFound(seeCustomer(await requirePerson('customer.change'), id))
  const { name, phone, otherPhone, email, address, note } = customer.contact
  const fresh = { customerId: id, version: customer.version, name, phone, otherPhone, email, address, note }
  return (
    <>
      <PageHead up={[`/customers/${id}`, name]} title={`Change ${name}`} />
      <CustomerForm fresh={fresh} by={changedBy(customer.last, customer)} />
    </>
  )
}
