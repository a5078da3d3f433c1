import { PageHead } from '@/app/(staff)/back-room/_components/page-head'
import { requirePerson } from '@/lib/web/require-actor'
import { ImportForm } from '../_components/import-form'

export const metadata = { title: 'Import customers' }

export default async function ImportPage() {
  await requirePerson('customer.change')
  return (
    <>
      <PageHead up={['/customers', 'Customers']} title="Import customers">
        <p className="soft">
          Choose a CSV file or paste a table from a spreadsheet. The first line names the columns: name, phone, e-mail,
          address, note. At most 2,000 lines at a time.
        </p>
      </PageHead>
      <ImportForm />
    </>
  )
}
