import type { Metadata } from 'next'
import { seeBooks } from '@/lib/use-cases/money/see-books'
import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from '../_components/page-head'
import { BooksForm } from './books-form'

export const metadata: Metadata = { title: 'For the bookkeeper' }

export default async function BookkeeperPage() {
  const actor = await requirePerson('bookkeeping.see')
  const days = await seeBooks(actor, new Date())
  return (
    <>
      <PageHead up={['/back-room', 'Back room']} title="For the bookkeeper">
        <p className="soft">
          Files for a spreadsheet. Credit notes and money paid back are below zero; a voided payment has 0 and its
          reason. Tax is by the day of the invoice.
        </p>
      </PageHead>
      <BooksForm {...days} />
    </>
  )
}
