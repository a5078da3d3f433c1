import type { Metadata } from 'next'
import type { Actor } from '@/lib/core/access/roles'
import { benchFromQuery } from '@/lib/schemas/bench-question'
import type { BookJobForm } from '@/lib/schemas/job'
import { startBookingFromBench, startBookingFromEstimate } from '@/lib/use-cases/cut-bench/start-booking'
import { seeBooking } from '@/lib/use-cases/jobs/see-booking'
import { startBookingAgain, startBookingFor, startComeback } from '@/lib/use-cases/jobs/start-again'
import { orNotFound } from '@/lib/web/or-not-found'
import { queryOf, type SearchParams } from '@/lib/web/query-of'
import { requirePerson } from '@/lib/web/require-actor'
import { BookingForm } from './_components/booking-form'

export const metadata: Metadata = { title: 'Book a job' }

export default async function BookPage({ searchParams }: { searchParams: Promise<SearchParams> }) {
  const actor = await requirePerson('job.book')
  const query = queryOf(await searchParams)
  const booking = await seeBooking(actor, { now: new Date() })
  const initial = await begun(actor, query)
  return (
    <>
      <h1>Book a job</h1>
      <BookingForm booking={booking} initial={initial} draftKey={query.toString()} />
    </>
  )
}

/** What it begins with: an earlier job, a kept answer, a question to the cut bench, a customer, or nothing. */
async function begun(actor: Actor, query: URLSearchParams): Promise<BookJobForm | undefined> {
  const given = ['again', 'comeback', 'estimate', 'customer'] as const
  const [again, comeback, estimate, customer] = given.map((name) => query.get(name) ?? '')
  if (again) return orNotFound(startBookingAgain(actor, again))
  if (comeback) return orNotFound(startComeback(actor, comeback))
  if (estimate) return orNotFound(startBookingFromEstimate(actor, estimate))
  if (query.size === 0) return undefined
  const forWhom = customer ? await orNotFound(startBookingFor(actor, customer)) : undefined
  if (forWhom && query.size === 1) return forWhom
  const fromBench = await startBookingFromBench(actor, {
    question: benchFromQuery(query),
    wayId: query.get('way') ?? '',
    angleIn: angleOf(query.get('angle')),
  })
  return { ...fromBench, ...(forWhom && { customer: forWhom.customer }) }
}

function angleOf(text: string | null): number | null {
  const angleIn = text === null ? NaN : Number(text)
  return angleIn >= 0 && angleIn <= 0.5 ? angleIn : null
}
