import type { Metadata } from 'next'
import { Suspense } from 'react'
import { MailTrouble } from '@/app/_components/messages/mail-trouble'
import { AutoRefresh } from '@/app/_components/auto-refresh'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { Loading } from '@/app/_components/ui/loading'
import { Pager } from '@/app/_components/ui/pager'
import { can } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { seeCounter } from '@/lib/use-cases/counter/see-counter'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { seeArriving } from '@/lib/use-cases/supply/see-arriving'
import { pageOf } from '@/lib/web/page-of'
import { requirePerson } from '@/lib/web/require-actor'
import { AnswerList } from './_components/answer-list'
import { ArrivingList } from './_components/arriving-list'
import { JobList } from './_components/job-list'

export const metadata: Metadata = { title: 'Counter' }

type Props = { searchParams: Promise<{ page?: string | string[] }> }

export default async function CounterPage({ searchParams }: Props) {
  const page = pageOf((await searchParams).page)
  const actor = await requirePerson('job.see')
  const mayBook = can(actor, 'job.book')
  return (
    <>
      <div className="row spread">
        <h1>At the counter</h1>
        <div className="row">
          {can(actor, 'customer.see') && <ButtonLink href="/customers">Customers</ButtonLink>}
          {can(actor, 'price.see') && <ButtonLink href="/counter/unpaid">Unpaid</ButtonLink>}
          {can(actor, 'paper.print') && <ButtonLink href="/counter/labels">Tag labels</ButtonLink>}
          {mayBook && (
            <ButtonLink href="/counter/book" variant="main">
              Book a job
            </ButtonLink>
          )}
        </div>
      </div>
      <Suspense fallback={<Loading />}>
        <Lists actor={actor} mayBook={mayBook} page={page} />
      </Suspense>
    </>
  )
}

async function Lists({ actor, mayBook, page }: { actor: Actor; mayBook: boolean; page: number }) {
  const newest = await newestChange()
  const [counter, arriving] = await Promise.all([
    seeCounter(actor, { now: new Date(), page }),
    seeArriving(actor, new Date(), page),
  ])
  return (
    <>
      <AutoRefresh newest={newest} />
      <MailTrouble actor={actor} />
      <div className="columns">
        <div className="stack-large">
          <JobList
            title="Promises at risk"
            jobs={counter.atRisk}
            view={counter}
            tell="why"
            empty={
              <EmptyState title="No promise is at risk">
                <p>
                  A job stands here from two days before its promise until its heads are finished, with what it waits
                  for.
                </p>
              </EmptyState>
            }
          />
          <AnswerList findings={counter.answers} view={counter} mayAsk={can(actor, 'finding.ask')} />
        </div>
        <div className="stack-large">
          <JobList
            title="Ready to hand over"
            jobs={counter.ready}
            view={counter}
            tell="since"
            handOver={can(actor, 'visit.hand-over')}
            empty={
              <EmptyState title="Nothing to hand over">
                <p>Released heads stand here until somebody takes them.</p>
              </EmptyState>
            }
          />
          <JobList
            title="Finished, waiting for release"
            jobs={counter.finished}
            view={counter}
            tell="since"
            empty={
              <EmptyState title="Nothing waits for release">
                <p>A head that passed its final inspection stands here until the owner or a deputy releases it.</p>
              </EmptyState>
            }
          />
          <ArrivingList orders={arriving.rows} locale={counter.locale} />
          <JobList
            title="Expected in"
            jobs={counter.expected}
            view={counter}
            tell="nothing"
            empty={
              <EmptyState title="Nothing is expected">
                <p>
                  {mayBook
                    ? 'Book a job: its heads stand here until they are checked in.'
                    : 'Booked heads stand here until they are checked in.'}
                </p>
              </EmptyState>
            }
          />
        </div>
      </div>
      <Pager page={page} more={counter.more || arriving.more} href={(to) => `/counter?page=${to}`} />
    </>
  )
}
