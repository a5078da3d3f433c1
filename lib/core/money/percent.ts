import { ok, refuse, type Result } from '../errors'

/**
 * A percentage as typed ("8.25", "8.25 %", "8,25%"), in hundredths of a per cent.
 * @returns 0 to 9999 basis points; '' is 0; refused as `unreadable`
 * Example: "8.25 %" → 825.
 */
export function parsePercent(text: string): Result<number> {
  const match = /^(?:(\d{1,2})(?:[.,](\d{1,2}))?\s*%?)?$/.exec(text.trim())
  if (!match) return refuse('unreadable', 'Enter a percentage, such as 8.25, or leave it empty.')
  const [, whole = '0', decimals = ''] = match
  return ok(Number(whole) * 100 + Number(decimals.padEnd(2, '0')))
}

/** Hundredths of a per cent in words: 825 → "8.25 %", 1000 → "10 %", 0 → "none". */
export function percentOf(basisPoints: number): string {
  if (basisPoints === 0) return 'none'
  const rest = String(basisPoints % 100).padStart(2, '0')
  const decimals = rest === '00' ? '' : `.${rest.replace(/0$/, '')}`
  return `${Math.floor(basisPoints / 100)}${decimals} %`
}

/** Hundredths of a per cent as they are typed: 825 → "8.25", 0 → "". The inverse of `parsePercent`. */
export const taxText = (basisPoints: number): string =>
  basisPoints === 0 ? '' : percentOf(basisPoints).replace(' %', '')

/** A tax in words: "Sales tax, 8.25 %"; of a rate without a name "8.25 %"; no tax is "none". */
export const taxWords = (name: string, basisPoints: number): string =>
  name === '' ? percentOf(basisPoints) : `${name}, ${basisPoints === 0 ? '0 %' : percentOf(basisPoints)}`
