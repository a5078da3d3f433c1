import { calendarDay } from '@/lib/core/shop/when-words'
import { SaidDay } from './said-day'

type Props = {
  /** A day of the calendar ("2026-03-14"): it has no time zone. */
  on: string
  locale: string
  style?: 'day' | 'date'
}

export function Day({ on, locale, style = 'day' }: Props) {
  return <SaidDay on={on} said={calendarDay(on, style, locale)} />
}
