import type { Metadata } from 'next'
import Form from 'next/form'
import { Link } from '@/app/_components/ui/link'
import { Button } from '@/app/_components/ui/button'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Money } from '@/app/_components/ui/money'
import { Pager } from '@/app/_components/ui/pager'
import { Phone } from '@/app/_components/ui/phone'
import { Table } from '@/app/_components/ui/table'
import { TextInput } from '@/app/_components/ui/text-input'
import { When } from '@/app/_components/ui/when'
import { can } from '@/lib/core/access/can'
import { seeCustomersSchema } from '@/lib/schemas/customer'
import { seeCustomers } from '@/lib/use-cases/customers/see-customers'
import { pageOf } from '@/lib/web/page-of'
import { requirePerson } from '@/lib/web/require-actor'

export const metadata: Metadata = { title: 'Customers' }

type Props = { searchParams: Promise<{ q?: string | string[]; page?: string | string[] }> }

const columns = [
  { id: 'name', label: 'Name', head: true },
  { id: 'phone', label: 'Phone' },
  { id: 'last', label: 'Last job' },
  { id: 'jobs', label: 'Jobs', figure: true },
  { id: 'owed', label: 'Owed', figure: true },
]

export default async function CustomersPage({ searchParams }: Props) {
  const { q: asked, page: given } = await searchParams
  const page = pageOf(given)
  const input = seeCustomersSchema.safeParse({ q: typeof asked === 'string' ? asked : '' })
  const q = input.success ? input.data.q : ''
  const actor = await requirePerson('customer.see')
  const { rows, more, mayChange, timeZone, locale, currency } = await seeCustomers(actor, { q, page })
  return (
    <>
      <div className="row spread">
        <h1>Customers</h1>
        <div className="row">
          {can(actor, 'customer.export') && <ButtonLink href="/api/customers/export">Export (CSV)</ButtonLink>}
          {mayChange && <ButtonLink href="/customers/import">Import</ButtonLink>}
        </div>
      </div>
      <Form action="/customers" className="row">
        <TextInput label="Name or phone" name="q" type="search" defaultValue={q} key={q} autoComplete="off" />
        <Button type="submit">Search</Button>
      </Form>
      <Table
        label="Customers"
        columns={columns}
        rows={rows.map(({ id, name, phone, jobs, owedMinor, lastJobAt }) => ({
          id,
          cells: {
            name: <Link href={`/customers/${id}`}>{name}</Link>,
            phone: phone !== '' && <Phone number={phone} />,
            jobs,
            last: lastJobAt && <When at={lastJobAt} zone={timeZone} locale={locale} style="date" />,
            owed: owedMinor !== 0 && <Money minor={owedMinor} currency={currency} locale={locale} />,
          },
        }))}
        empty={
          <p className="soft">
            {q === '' ? 'No customers yet. Book a job or import a list.' : `No customer matches “${q}”.`}
          </p>
        }
      />
      <Pager page={page} more={more} href={(to) => `/customers?page=${to}`} />
    </>
  )
}
