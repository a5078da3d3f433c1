import type { Metadata } from 'next'
import { wayKinds, type WayKind } from '@/lib/core/options/bench-types'
import { benchFromQuery } from '@/lib/schemas/bench'
import { bookingFromBench } from '@/lib/schemas/booking-from-bench'
import type { BookJobForm } from '@/lib/schemas/job'
import { seeEstimate } from '@/lib/use-cases/cut-bench/see-estimate'
import { seeBooking } from '@/lib/use-cases/jobs/see-booking'
import { orNotFound } from '@/lib/web/or-not-found'
import { queryOf, type SearchParams } from '@/lib/web/query-of'
import { requirePerson } from '@/lib/web/require-actor'
import { BookingForm } from './_components/booking-form'

export const metadata: Metadata = { title: 'Book a job' }

export default async function BookPage({ searchParams }: { searchParams: Promise<SearchParams> }) {
  const actor = await requirePerson('job.book')
  const query = queryOf(await searchParams)
  const booking = await seeBooking(actor, { now: new Date() })
  const initial = query.has('estimate') ? await fromEstimate(actor, query.get('estimate') ?? '') : fromBench(query)
  return (
    <>
      <h1>Book a job</h1>
      <BookingForm booking={booking} initial={initial} draftKey={query.toString()} />
    </>
  )
}

async function fromEstimate(actor: Parameters<typeof seeEstimate>[0], id: string): Promise<BookJobForm> {
  const { question, answer } = await orNotFound(seeEstimate(actor, id))
  return bookingFromBench(question, answer.kind, id)
}

function fromBench(query: URLSearchParams): BookJobForm | undefined {
  if (query.size === 0) return undefined
  const kind = wayKinds.find((known) => known === query.get('way')) as WayKind | undefined
  return bookingFromBench(benchFromQuery(query), kind ?? null, '')
}
