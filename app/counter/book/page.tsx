import type { Metadata } from 'next'
import { Frame } from '@/app/_components/frame'
import { seeBooking } from '@/lib/use-cases/jobs/see-booking'
import { requirePerson } from '@/lib/web/require-actor'
import { BookingForm } from './_components/booking-form'

export const metadata: Metadata = { title: 'Book a job' }

export default async function BookPage() {
  const actor = await requirePerson('job.book', '/counter/book')
  const booking = await seeBooking(actor, { now: new Date() })
  return (
    <Frame place="counter" actor={actor}>
      <h1>Book a job</h1>
      <BookingForm booking={booking} />
    </Frame>
  )
}
