import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../../_components/back-link'
import { AddPersonForm } from '../_components/add-person-form'

export const metadata = { title: 'Add a person' }

export default async function AddPersonPage() {
  await requirePerson('person.change')
  return (
    <>
      <div className="stack">
        <BackLink href="/back-room/people">People</BackLink>
        <h1>Add a person</h1>
      </div>
      <AddPersonForm />
    </>
  )
}
