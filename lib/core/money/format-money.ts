import { numberFormat } from '../shop/formats'

/** Money in minor units ("12345" cents) in the shop's currency and locale; digits are moved as text, never divided. */
export function formatMoney(minor: number, currency: string, locale: string): string {
  const format = numberFormat(locale, { style: 'currency', currency })
  const digits = format.resolvedOptions().maximumFractionDigits ?? 2
  const text = Math.abs(minor)
    .toFixed(0)
    .padStart(digits + 1, '0')
  const whole = digits === 0 ? text : text.slice(0, -digits)
  const rest = digits === 0 ? '' : `.${text.slice(-digits)}`
  return format.format(`${minor < 0 ? '-' : ''}${whole}${rest}` as Intl.StringNumericLiteral)
}
