import Link from 'next/link'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Table } from '@/app/_components/ui/table'
import { seePeople, type PersonSeen } from '@/lib/use-cases/people/see-people'
import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../_components/back-link'

export const metadata = { title: 'People' }

const columns = [
  { id: 'name', label: 'Name', head: true },
  { id: 'signIn', label: 'Signs in as' },
  { id: 'roles', label: 'Roles' },
  { id: 'grants', label: 'Deputy for' },
]

const rowOf = (person: PersonSeen) => ({
  id: person.id,
  cells: {
    name: <Link href={`/back-room/people/${person.id}`}>{person.name}</Link>,
    signIn: person.signIn,
    roles: person.retired ? 'retired' : person.roles.join(', '),
    grants: person.retired ? '' : person.grants.join(', '),
  },
})

export default async function PeoplePage() {
  const actor = await requirePerson('person.change')
  const people = await seePeople(actor)
  return (
    <>
      <div className="stack">
        <BackLink href="/back-room">Back room</BackLink>
        <div className="row spread">
          <h1>People</h1>
          <ButtonLink href="/back-room/people/new" variant="main">
            Add a person
          </ButtonLink>
        </div>
      </div>
      <Table
        label="People"
        columns={columns}
        rows={[...people.filter((one) => !one.retired), ...people.filter((one) => one.retired)].map(rowOf)}
      />
    </>
  )
}
