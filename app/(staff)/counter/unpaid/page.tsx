import type { Metadata } from 'next'
import { Link } from '@/app/_components/ui/link'
import { Money } from '@/app/_components/ui/money'
import { Pager } from '@/app/_components/ui/pager'
import { Phone } from '@/app/_components/ui/phone'
import { Table } from '@/app/_components/ui/table'
import { When } from '@/app/_components/ui/when'
import { WorkFilterLinks } from '../_components/work-filter-links'
import { seeUnpaid } from '@/lib/use-cases/money/see-unpaid'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { pageOf, type ListProps } from '@/lib/web/page-of'
import { requirePerson } from '@/lib/web/require-actor'

export const metadata: Metadata = { title: 'Unpaid' }

const columns = [
  { id: 'job', label: 'Job', head: true },
  { id: 'customer', label: 'Customer' },
  { id: 'phone', label: 'Phone' },
  { id: 'invoiced', label: 'Invoiced' },
  { id: 'left', label: 'Handed over' },
  { id: 'owed', label: 'Owed', figure: true },
]

export default async function UnpaidPage({ searchParams }: ListProps) {
  const page = pageOf((await searchParams).page)
  const actor = await requirePerson('price.see')
  const [list, { timeZone, locale, currency }] = await Promise.all([seeUnpaid(actor, page), shopLocale()])
  const day = (at: Date) => <When at={at} zone={timeZone} locale={locale} style="date" />
  return (
    <>
      <h1>Unpaid</h1>
      <WorkFilterLinks chosen={null} counts={null} withPrices />
      <p className="soft">Jobs that were invoiced or handed over and are not paid in full.</p>
      <Table
        label="Unpaid jobs"
        stacks
        columns={columns}
        rows={list.rows.map((job) => ({
          id: job.id,
          cells: {
            job: <Link href={`/jobs/${job.number}`}>{job.number}</Link>,
            customer: job.customer,
            phone: <Phone number={job.phone} />,
            invoiced: job.invoicedAt ? day(job.invoicedAt) : 'not yet',
            left: job.left && (
              <span>
                {day(job.left.at)}
                {job.left.reason !== '' && `: ${job.left.reason}`}
              </span>
            ),
            owed: <Money minor={job.dueMinor} currency={currency} locale={locale} />,
          },
        }))}
        empty={<p className="soft">Nothing is unpaid.</p>}
      />
      <Pager page={page} more={list.more} href={(to) => `/counter/unpaid?page=${to}`} />
    </>
  )
}
