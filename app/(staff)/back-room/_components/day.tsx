/** A day of the calendar ("2026-03-14") in the shop's manner; it has no hour and so no zone. */
export function Day({ day, locale }: { day: string; locale: string }) {
  const format = new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeZone: 'UTC' })
  return (
    <time dateTime={day} className="nowrap">
      {format.format(Date.parse(`${day}T00:00:00Z`))}
    </time>
  )
}
