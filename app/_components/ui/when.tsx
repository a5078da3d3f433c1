import { whenWords, type WhenStyle } from '@/lib/core/shop/when-words'

type Props = {
  /** A Date, or its ISO text. */
  at: Date | string
  zone: string
  locale: string
  style?: WhenStyle
}

export function When({ at, zone, locale, style = 'date-time' }: Props) {
  const moment = typeof at === 'string' ? new Date(at) : at
  return (
    <time dateTime={moment.toISOString()} className="nowrap">
      {whenWords(moment, style, { timeZone: zone, locale })}
    </time>
  )
}
