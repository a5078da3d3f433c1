import { z } from 'zod'
import { isDay } from '@/lib/core/shop/calendar'
import { text } from './text'

export const bookKinds = ['invoices', 'payments', 'tax'] as const
export type BookKind = (typeof bookKinds)[number]

const day = text().refine(isDay, 'Choose a day.')

/** A file for the bookkeeper: from the first day to the last, both in it. */
export const booksSchema = z
  .object({ kind: z.enum(bookKinds), from: day, to: day })
  .refine(({ from, to }) => from <= to, { path: ['to'], message: 'The last day is before the first.' })
export type BooksInput = z.output<typeof booksSchema>
