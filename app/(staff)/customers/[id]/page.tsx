import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { cache } from 'react'
import { AutoRefresh } from '@/app/_components/auto-refresh'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Pager } from '@/app/_components/ui/pager'
import { seeCustomer } from '@/lib/use-cases/customers/see-customer'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { orNotFound } from '@/lib/web/or-not-found'
import { pageOf } from '@/lib/web/page-of'
import { requirePerson } from '@/lib/web/require-actor'
import { CustomerBlock } from '../_components/customer-block'
import { CustomerHeads } from '../_components/customer-heads'
import { CustomerJobs } from '../_components/customer-jobs'
import { CustomerMoney } from '../_components/customer-money'
import { FoundOnHeads, Merges, Said } from '../_components/customer-said'

type Props = { params: Promise<{ id: string }>; searchParams: Promise<{ page?: string | string[] }> }

const see = cache(async (id: string, page: number) =>
  orNotFound(seeCustomer(await requirePerson('customer.see'), id, page)),
)

export async function generateMetadata({ params, searchParams }: Props): Promise<Metadata> {
  return { title: (await see((await params).id, pageOf((await searchParams).page))).contact.name }
}

/** All that the shop knows of one customer. One that was merged leads to the other. */
export default async function CustomerPage({ params, searchParams }: Props) {
  const { id } = await params
  const page = pageOf((await searchParams).page)
  const newest = await newestChange()
  const customer = await see(id, page)
  if (customer.mergedIntoId) redirect(`/customers/${customer.mergedIntoId}`)
  const { may, contact } = customer
  return (
    <>
      <AutoRefresh newest={newest} />
      <CustomerBlock customer={customer} />
      {contact.blankedAt === null && (
        <div className="row no-print">
          {may.book && (
            <ButtonLink href={`/counter/book?customer=${id}`} variant="main">
              Book a job
            </ButtonLink>
          )}
          {may.estimate && <ButtonLink href={`/cut-bench?customer=${id}`}>Estimate a cut</ButtonLink>}
          {may.change && <ButtonLink href={`/customers/${id}/change`}>Change</ButtonLink>}
          {may.change && <ButtonLink href={`/customers/${id}/merge`}>Merge with another</ButtonLink>}
          {may.blank && (
            <ButtonLink href={`/customers/${id}/remove`} variant="quiet">
              Remove personal data
            </ButtonLink>
          )}
        </div>
      )}
      <div className="columns">
        <div className="stack-large">
          <CustomerJobs customer={customer} />
          <CustomerHeads customer={customer} />
          <FoundOnHeads customer={customer} />
        </div>
        <div className="stack-large">
          {customer.money && <CustomerMoney customer={customer} money={customer.money} />}
          <Said customer={customer} />
          <Merges customer={customer} />
        </div>
      </div>
      <Pager page={page} more={customer.more} href={(to) => `/customers/${id}?page=${to}`} />
    </>
  )
}
