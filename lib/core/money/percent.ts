import { ok, refuse, type Result } from '../errors'

/** A rate of one per cent in millionths: rates have four decimals of a per cent. */
const onePercent = 10_000

/**
 * A percentage as typed ("8.875", "8.875 %", "8,875%"), in millionths.
 * @returns 0 to 999,999 millionths, which is 99.9999 %; '' is 0; refused as `unreadable`
 * Example: "8.875 %" → 88750.
 */
export function parsePercent(text: string): Result<number> {
  const match = /^(?:(\d{1,2})(?:[.,](\d{1,4}))?\s*%?)?$/.exec(text.trim())
  if (!match) return refuse('unreadable', 'Enter a percentage, such as 8.25 or 8.875, or leave it empty.')
  const [, whole = '0', decimals = ''] = match
  return ok(Number(whole) * onePercent + Number(decimals.padEnd(4, '0')))
}

/** Millionths in words: 82500 → "8.25 %", 88750 → "8.875 %", 100000 → "10 %", 0 → "none". */
export function percentOf(rateMillionths: number): string {
  if (rateMillionths === 0) return 'none'
  const rest = String(rateMillionths % onePercent)
    .padStart(4, '0')
    .replace(/0+$/, '')
  return `${Math.floor(rateMillionths / onePercent)}${rest === '' ? '' : `.${rest}`} %`
}

/** Millionths as they are typed in per cent: 88750 → "8.875", 0 → "". The inverse of `parsePercent`. */
export const taxText = (rateMillionths: number): string =>
  rateMillionths === 0 ? '' : percentOf(rateMillionths).replace(' %', '')

/** A rate that stands by itself: "8.875 %", "0 %". */
export const rateText = (rateMillionths: number): string => (rateMillionths === 0 ? '0 %' : percentOf(rateMillionths))

/** A tax in words: "Sales tax, 8.25 %"; of a rate without a name "8.25 %"; no tax is "none". */
export const taxWords = (name: string, rateMillionths: number): string =>
  name === '' ? percentOf(rateMillionths) : `${name}, ${rateText(rateMillionths)}`
