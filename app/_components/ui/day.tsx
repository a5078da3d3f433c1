import { formatWhen } from './format'

/** A day of the calendar ("2026-03-14") in the shop's locale: it has no time zone. */
export function Day({ on, locale, style = 'day' }: { on: string; locale: string; style?: 'day' | 'date' }) {
  return (
    <time dateTime={on} className="nowrap">
      {formatWhen(new Date(`${on}T12:00:00Z`), 'UTC', locale, style)}
    </time>
  )
}
