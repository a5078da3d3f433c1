import { PageHead } from '@/app/(staff)/back-room/_components/page-head'
import { seeCustomer } from '@/lib/use-cases/customers/see-customer'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'
import { RemoveForm } from '../../_components/remove-form'

export const metadata = { title: 'Remove personal data' }

export default async function RemovePage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params
  const { contact, version } = await orNotFound(seeCustomer(await requirePerson('customer.blank'), id))
  return (
    <>
      <PageHead up={[`/customers/${id}`, contact.name]} title={`Remove the personal data of ${contact.name}`} />
      <p>
        Removed for good: name, phone numbers, e-mail, address, note, the notes on the jobs, owners of parts, the texts
        of messages, and the customer’s links. Nobody can bring them back.
      </p>
      <p>
        Kept: jobs and measurements; invoices, credit notes, receipts and spec sheets as they were handed out, as the
        law on books asks; names in calls, answers, hand-overs, estimates and the trail as they were written. Backups
        hold the data until they are replaced.
      </p>
      <RemoveForm customerId={id} version={version} name={contact.name} />
    </>
  )
}
