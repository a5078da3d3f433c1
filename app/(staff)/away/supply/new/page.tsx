import { Link } from '@/app/_components/ui/link'
import { z } from 'zod'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { Pager } from '@/app/_components/ui/pager'
import { seeOrdering } from '@/lib/use-cases/supply/see-ordering'
import { orNotFound } from '@/lib/web/or-not-found'
import { pageOf } from '@/lib/web/page-of'
import { requirePerson } from '@/lib/web/require-actor'
import { OrderForm } from './order-form'

export const metadata = { title: 'Order heads or parts' }

type Props = { searchParams: Promise<{ job?: string | string[]; page?: string | string[] }> }

export default async function OrderPage({ searchParams }: Props) {
  const asked = await searchParams
  const parsed = z.string().max(20).safeParse(asked.job)
  const job = parsed.success ? parsed.data : null
  const page = pageOf(asked.page)
  const actor = await requirePerson('supply.order')
  const ordering = await orNotFound(seeOrdering(actor, { job, now: new Date(), page }))
  return (
    <>
      <h1>
        Order heads or parts
        {ordering.job && (
          <>
            {' '}
            for job <Link href={`/jobs/${ordering.job.number}`}>{ordering.job.number}</Link>
          </>
        )}
      </h1>
      {ordering.vendors.rows.length === 0 ? (
        <EmptyState title="No suppliers yet.">
          <p>The owner adds them under Vendors in the Back room.</p>
        </EmptyState>
      ) : (
        <OrderForm ordering={ordering} />
      )}
      <Pager
        page={page}
        more={ordering.more}
        href={(to) => `/away/supply/new?${job === null ? '' : `job=${job}&`}page=${to}`}
      />
    </>
  )
}
