import { dateFormat } from '@/lib/core/shop/formats'

export const whenStyles = {
  date: { dateStyle: 'medium' },
  day: { weekday: 'short', day: 'numeric', month: 'short' },
  time: { timeStyle: 'short' },
  'date-time': { dateStyle: 'medium', timeStyle: 'short' },
} as const satisfies Record<string, Intl.DateTimeFormatOptions>

export type WhenStyle = keyof typeof whenStyles

/** A moment in the shop's zone and locale, whatever the zone of the machine. */
export function formatWhen(at: Date, zone: string, locale: string, style: WhenStyle): string {
  return dateFormat(locale, { ...whenStyles[style], timeZone: zone }).format(at)
}
