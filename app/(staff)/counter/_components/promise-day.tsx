import { Day } from '@/app/_components/ui/day'
import { Sign } from '@/app/_components/ui/sign'

type Props = {
  on: string | null
  /** Null: none was promised, or all of it has left. */
  daysLeft: number | null
  urgent: boolean
  locale: string
  /** The day alone, and how late it is. */
  short?: boolean
}

function distance(days: number): string {
  if (days === 0) return 'today'
  if (days === 1) return 'tomorrow'
  if (days > 1) return `in ${days} days`
  return days === -1 ? '1 day late' : `${-days} days late`
}

/** The promise of a job and how near it is. */
export function PromiseDay({ on, daysLeft, urgent, locale, short = false }: Props) {
  return (
    <span className="row">
      {urgent && <strong>Urgent</strong>}
      {on === null && <span className="soft">no promise date</span>}
      {on !== null && daysLeft === null && (
        <span className="soft">
          {short ? '' : 'was promised for '}
          <Day on={on} locale={locale} />
        </span>
      )}
      {on !== null && daysLeft !== null && (
        <span className="nowrap">
          {daysLeft < 0 && <Sign kind="caution" />} <Day on={on} locale={locale} />
          {daysLeft < 0 ? (
            <strong>, {distance(daysLeft)}</strong>
          ) : (
            (!short || daysLeft === 0) && `, ${distance(daysLeft)}`
          )}
        </span>
      )}
    </span>
  )
}
