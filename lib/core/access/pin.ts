import { ok, refuse, type Result } from '../errors'

/** Digits of a PIN. */
export const pinDigits = 6

const ascending = '01234567890'
const descending = '09876543210'

/** The same one, two or three digits over and over: 444444, 121212, 123123. */
const repeats = (pin: string): boolean => [1, 2, 3].some((length) => pin.slice(length) === pin.slice(0, -length))

/**
 * A PIN that somebody may have, or why not. Refused is what anybody tries first: digits that repeat, digits in order. A
 * birthday is not: nobody's is on record.
 *
 * Range: text. Formula: six digits; not in `01234567890` or `09876543210`; no period of 1, 2 or 3.
 * Derived: 6 + 6 runs in order, and every text of period 1, 2 or 3 (1,000 + 100 − 10), leave 998,898 of 1,000,000.
 * Example: `acceptablePin('480215')` → ok; `acceptablePin('345678')` → refused.
 */
export function acceptablePin(pin: string): Result<string> {
  if (!/^\d{6}$/.test(pin)) return refuse('invalid', 'A PIN has six digits.')
  if (repeats(pin)) return refuse('invalid', 'These digits repeat. Anyone would try them first. Choose others.')
  if (ascending.includes(pin) || descending.includes(pin)) {
    return refuse('invalid', 'These digits are in order. Anyone would try them first. Choose others.')
  }
  return ok(pin)
}
