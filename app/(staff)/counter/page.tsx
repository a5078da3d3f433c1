import { Link } from '@/app/_components/ui/link'
import type { Metadata } from 'next'
import { MailTrouble } from '@/app/_components/messages/mail-trouble'
import { AutoRefresh } from '@/app/_components/auto-refresh'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Pager } from '@/app/_components/ui/pager'
import { can } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { seeCounter, type CounterView } from '@/lib/use-cases/counter/see-counter'
import { isWorkFilter, type WorkFilter } from '@/lib/use-cases/counter/work-filters'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { pageOf } from '@/lib/web/page-of'
import { requirePerson } from '@/lib/web/require-actor'
import { NeedsYou } from './_components/needs-you'
import { WorkFilterLinks } from './_components/work-filter-links'
import { WorkTable } from './_components/work-table'
import styles from './_components/counter.module.css'

export const metadata: Metadata = { title: 'Counter' }

type Props = { searchParams: Promise<{ page?: string | string[]; show?: string | string[] }> }

export default async function CounterPage({ searchParams }: Props) {
  const asked = await searchParams
  const page = pageOf(asked.page)
  const filter = typeof asked.show === 'string' && isWorkFilter(asked.show) ? asked.show : 'all'
  const actor = await requirePerson('job.see')
  return (
    <>
      <div className="row spread">
        <h1 className="no-print">At the counter</h1>
        <div className="row no-print">
          {can(actor, 'customer.see') && <ButtonLink href="/customers">Customers</ButtonLink>}
          {can(actor, 'paper.print') && <ButtonLink href="/counter/labels">Tag labels</ButtonLink>}
          {can(actor, 'job.book') && (
            <ButtonLink href="/counter/book" variant="main">
              Book a job
            </ButtonLink>
          )}
        </div>
      </div>
      <WorkInHand actor={actor} filter={filter} page={page} />
    </>
  )
}

const hrefOf = (filter: WorkFilter, page: number): string =>
  `/counter?${new URLSearchParams({ ...(filter === 'all' ? {} : { show: filter }), page: String(page) }).toString()}`

async function WorkInHand({ actor, filter, page }: { actor: Actor; filter: WorkFilter; page: number }) {
  const newest = await newestChange()
  const view = await seeCounter(actor, { now: new Date(), filter, page })
  const withPrices = can(actor, 'price.see')
  const may = {
    ask: can(actor, 'finding.ask'),
    handOver: can(actor, 'visit.hand-over'),
    release: can(actor, 'visit.release'),
  }
  return (
    <>
      <AutoRefresh newest={newest} />
      <MailTrouble actor={actor} />
      {page === 1 && <NeedsYou view={view} may={may} />}
      <section aria-labelledby="work" className="stack">
        <div className={styles.head}>
          <h2 id="work">Work in hand</h2>
          <WorkFilterLinks chosen={filter} counts={view.counts} withPrices={withPrices} />
        </div>
        {view.jobs.length > 0 ? (
          <WorkTable view={view} withPrices={withPrices} />
        ) : (
          <Nothing view={view} mayBook={can(actor, 'job.book')} maySetUp={can(actor, 'settings.change')} />
        )}
        <Pager page={page} more={view.more} href={(to) => hrefOf(filter, to)} />
      </section>
    </>
  )
}

/** One line, with the next deed. */
function Nothing({ view, mayBook, maySetUp }: { view: CounterView; mayBook: boolean; maySetUp: boolean }) {
  if (view.counts.all > 0) return <p className="soft">No job here. {view.counts.all} in hand.</p>
  return (
    <div className="soft">
      <p>{mayBook ? 'No work in hand. Book a job: it is listed here until it is handed over.' : 'No work in hand.'}</p>
      {maySetUp && (
        <p>
          Is the shop new? Add <Link href="/back-room/people">people</Link>, <Link href="/back-room/taxes">taxes</Link>,{' '}
          <Link href="/back-room/prices">prices</Link> and <Link href="/back-room/castings">casting records</Link>{' '}
          before the first job.
        </p>
      )}
    </div>
  )
}
