import { seePeople } from '@/lib/use-cases/people/see-people'
import { pageOf, type ListProps } from '@/lib/web/page-of'
import { requirePerson } from '@/lib/web/require-actor'
import { Register } from '../_components/register'
import { grantWords, roleWords } from './_components/rights'

export const metadata = { title: 'People' }

export default async function PeoplePage({ searchParams }: ListProps) {
  const page = pageOf((await searchParams).page)
  const actor = await requirePerson('person.change')
  return (
    <Register
      title="People"
      href="/back-room/people"
      add="Add a person"
      columns={[
        { id: 'name', label: 'Name' },
        { id: 'signIn', label: 'Sign-in name' },
        { id: 'roles', label: 'Roles' },
        { id: 'grants', label: 'Deputy for' },
      ]}
      list={await seePeople(actor, page)}
      page={page}
      nameOf={({ name }) => name}
      cellsOf={({ signIn, roles, grants }) => ({
        signIn,
        roles: roles.map((role) => roleWords[role]).join(', '),
        grants: grants.map((grant) => grantWords[grant]).join(', '),
      })}
      empty="No people yet."
    />
  )
}
