import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from '../../_components/page-head'
import { AddTaxForm } from '../_components/tax-forms'

export const metadata = { title: 'Add a tax' }

export default async function AddTaxPage() {
  await requirePerson('settings.change')
  return (
    <>
      <PageHead up={['/back-room/taxes', 'Tax']} title="Add a tax" />
      <AddTaxForm />
    </>
  )
}
