import { dateFormat } from './formats'

/** How this shop writes a moment or a day; the machine's own zone never matters. */
export type WhenManner = { readonly timeZone: string; readonly locale: string }

/** "Mar 3, 2026, 2:05 PM" */
export const momentWords = (at: Date, { timeZone, locale }: WhenManner): string =>
  dateFormat(locale, { dateStyle: 'medium', timeStyle: 'short', timeZone }).format(at)

/** "Mar 3, 2026" */
export const dateWords = (at: Date, { timeZone, locale }: WhenManner): string =>
  dateFormat(locale, { dateStyle: 'medium', timeZone }).format(at)

/** A day of the calendar ("2026-03-14"), which has no zone; '' stays ''. */
export const dayWords = (day: string | null, { locale }: { readonly locale: string }): string =>
  day === null || day === '' ? '' : dateWords(new Date(`${day}T12:00:00Z`), { timeZone: 'UTC', locale })

/** "1 day", "3 days" */
export const daysText = (count: number): string => `${count} ${count === 1 ? 'day' : 'days'}`
