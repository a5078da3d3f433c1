import Form from 'next/form'
import { Link } from '@/app/_components/ui/link'
import { PageHead } from '@/app/(staff)/back-room/_components/page-head'
import { Button } from '@/app/_components/ui/button'
import { TextInput } from '@/app/_components/ui/text-input'
import type { Actor } from '@/lib/core/access/roles'
import { seeCustomersSchema } from '@/lib/schemas/customer'
import { seeCustomer, type CustomerView } from '@/lib/use-cases/customers/see-customer'
import { seeCustomers } from '@/lib/use-cases/customers/see-customers'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'
import { MergeForm } from '../../_components/merge-form'

export const metadata = { title: 'Merge two customers' }

type Props = {
  params: Promise<{ id: string }>
  searchParams: Promise<{ q?: string | string[]; with?: string | string[] }>
}

/** Looks for the other record, then shows both, and which of them stays. */
export default async function MergePage({ params, searchParams }: Props) {
  const { id } = await params
  const { q, with: other } = await searchParams
  const actor = await requirePerson('customer.change')
  const customer = await orNotFound(seeCustomer(actor, id))
  const { name } = customer.contact
  return (
    <>
      <PageHead up={[`/customers/${id}`, name]} title={`Merge another record with ${name}`}>
        <p className="soft">Jobs, heads, money and calls of the other record come here. The owner can undo it.</p>
      </PageHead>
      {typeof other === 'string' && other !== id ? (
        <MergeForm into={sideOf(customer)} from={sideOf(await orNotFound(seeCustomer(actor, other)))} />
      ) : (
        <Others actor={actor} id={id} q={typeof q === 'string' ? q : name} />
      )}
    </>
  )
}

const sideOf = ({ id, version, contact, sums }: CustomerView) => ({
  ...{ id, version, jobs: sums.jobs },
  ...{ name: contact.name, phone: contact.phone, email: contact.email, address: contact.address },
})

async function Others({ actor, id, q }: { actor: Actor; id: string; q: string }) {
  const input = seeCustomersSchema.safeParse({ q })
  const { rows } = await seeCustomers(actor, { q: input.success ? input.data.q : '', page: 1 })
  const others = rows.filter((row) => row.id !== id)
  return (
    <>
      <Form action={`/customers/${id}/merge`} className="row">
        <TextInput label="Name or phone of the other record" name="q" type="search" defaultValue={q} key={q} />
        <Button type="submit">Search</Button>
      </Form>
      {others.length === 0 ? (
        <p className="soft">No other customer matches.</p>
      ) : (
        <ul className="plain-list">
          {others.map((row) => (
            <li key={row.id} className="row">
              <Link href={`/customers/${id}/merge?with=${row.id}`}>{row.name}</Link>
              <span>{row.phone}</span>
              <span className="soft">{row.jobs === 1 ? '1 job' : `${row.jobs} jobs`}</span>
            </li>
          ))}
        </ul>
      )}
    </>
  )
}
