/** How a shop writes a moment or a day; the zone of the machine never matters. */
export type MomentManner = { readonly timeZone: string; readonly locale: string }

/** "Mar 3, 2026, 2:05 PM" */
export const momentText = (at: Date, { timeZone, locale }: MomentManner): string =>
  new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeStyle: 'short', timeZone }).format(at)

/** "Mar 3, 2026" */
export const dateText = (at: Date, { timeZone, locale }: MomentManner): string =>
  new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeZone }).format(at)

/** A day of the calendar ("2026-03-14"), which has no zone; '' stays ''. */
export const dayText = (day: string | null, { locale }: Pick<MomentManner, 'locale'>): string =>
  day === null || day === '' ? '' : dateText(new Date(`${day}T12:00:00Z`), { timeZone: 'UTC', locale })
