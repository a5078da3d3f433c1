import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from '../../_components/page-head'
import { AddPersonForm } from '../_components/add-person-form'

export const metadata = { title: 'Add a person' }

export default async function AddPersonPage() {
  await requirePerson('person.change')
  return (
    <>
      <PageHead up={['/back-room/people', 'People']} title="Add a person" />
      <AddPersonForm />
    </>
  )
}
