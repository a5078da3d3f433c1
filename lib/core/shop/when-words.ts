import { dateFormat } from './formats'

/** How this shop writes a moment or a day; the machine's own zone never matters. */
export type WhenManner = { readonly timeZone: string; readonly locale: string }

const whenStyles = {
  date: { dateStyle: 'medium' },
  day: { weekday: 'short', day: 'numeric', month: 'short' },
  time: { timeStyle: 'short' },
  'date-time': { dateStyle: 'medium', timeStyle: 'short' },
} as const satisfies Record<string, Intl.DateTimeFormatOptions>

export type WhenStyle = keyof typeof whenStyles

/** A moment in the shop's zone and locale. Example: 'day' writes "Tue, Mar 3", 'time' "2:05 PM". */
export const whenWords = (at: Date, style: WhenStyle, { timeZone, locale }: WhenManner): string =>
  dateFormat(locale, { ...whenStyles[style], timeZone }).format(at)

/** "Mar 3, 2026, 2:05 PM" */
export const momentWords = (at: Date, manner: WhenManner): string => whenWords(at, 'date-time', manner)

/** "Mar 3, 2026" */
export const dateWords = (at: Date, manner: WhenManner): string => whenWords(at, 'date', manner)

/** A day of the calendar ("2026-03-14"), which has no zone. Example: 'day' writes "Sat, Mar 14". */
export const calendarDay = (day: string, style: 'day' | 'date', locale: string): string =>
  whenWords(new Date(`${day}T12:00:00Z`), style, { timeZone: 'UTC', locale })

/** A day of the calendar and how the shop writes it, "Sat, Mar 14": for a browser, whose first words for a day take it 30 ms. */
export type SaidDay = { readonly on: string; readonly said: string }
export const saidDay = (on: string, locale: string): SaidDay => ({ on, said: calendarDay(on, 'day', locale) })

/** A day of the calendar as a date, "Mar 14, 2026"; '' stays ''. */
export const dayWords = (day: string | null, { locale }: { readonly locale: string }): string =>
  day === null || day === '' ? '' : calendarDay(day, 'date', locale)

/** "1 day", "3 days" */
export const daysText = (count: number): string => `${count} ${count === 1 ? 'day' : 'days'}`
