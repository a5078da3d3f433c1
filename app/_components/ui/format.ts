/** Money in minor units ("12345" cents) in the shop's currency and locale; digits are moved as text, never divided. */
export function formatMoney(minor: number, currency: string, locale: string): string {
  const format = new Intl.NumberFormat(locale, { style: 'currency', currency })
  const digits = format.resolvedOptions().maximumFractionDigits ?? 2
  const text = Math.abs(minor)
    .toFixed(0)
    .padStart(digits + 1, '0')
  const whole = digits === 0 ? text : text.slice(0, -digits)
  const rest = digits === 0 ? '' : `.${text.slice(-digits)}`
  return format.format(`${minor < 0 ? '-' : ''}${whole}${rest}` as Intl.StringNumericLiteral)
}

export const whenStyles = {
  date: { dateStyle: 'medium' },
  day: { weekday: 'short', day: 'numeric', month: 'short' },
  time: { timeStyle: 'short' },
  'date-time': { dateStyle: 'medium', timeStyle: 'short' },
} as const satisfies Record<string, Intl.DateTimeFormatOptions>

export type WhenStyle = keyof typeof whenStyles

/** A moment in the shop's zone and locale, whatever the zone of the machine. */
export function formatWhen(at: Date, zone: string, locale: string, style: WhenStyle): string {
  return new Intl.DateTimeFormat(locale, { ...whenStyles[style], timeZone: zone }).format(at)
}
