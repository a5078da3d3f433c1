import { ok, refuse, type Result } from '../errors'

/**
 * An amount as typed ("125", "125.5", "125,50") in minor units of a currency with `exponent` decimals (0 to 3). Thousands
 * are not grouped: "1,250" would read as one and a quarter to one person and as twelve hundred and fifty to another.
 * Example: "125.5" with exponent 2 → 12550.
 */
export function parseAmount(text: string, exponent: number): Result<number> {
  const match = /^(\d{1,9})(?:[.,](\d+))?$/.exec(text.trim())
  const decimals = match?.[2] ?? ''
  if (!match || decimals.length > exponent) return refuse('unreadable', `Type an amount such as ${sample(exponent)}.`)
  return ok(Number(`${match[1]}${decimals.padEnd(exponent, '0')}`))
}

const sample = (exponent: number): string =>
  exponent === 0 ? '125' : `125 or 125.${'50'.padEnd(exponent, '0').slice(0, exponent)}`

/** An amount as it is typed again: 12550 with exponent 2 → "125.50". The inverse of `minorOf` for amounts from 0. */
export function formatAmount(minor: number, exponent: number): string {
  const digits = String(minor).padStart(exponent + 1, '0')
  return exponent === 0 ? digits : `${digits.slice(0, -exponent)}.${digits.slice(-exponent)}`
}
