const rows = [
  ...['01234567890', 'abcdefghijklmnopqrstuvwxyz', 'qwertyuiop', 'asdfghjkl', 'zxcvbnm', 'qwertzuiop', 'yxcvbnm'],
  ...['azertyuiop', 'qsdfghjklm', '1q2w3e4r5t6y7u8i9o0p', '1qaz2wsx3edc4rfv5tgb6yhn7ujm', 'qazwsxedcrfvtgbyhnujm'],
]
const backwards = rows.map((row) => [...row].reverse().join(''))
const runs = [...rows, ...backwards]

/** The least that counts as a run: three signs in order. */
const leastRun = 3

/** How much of the text, from its beginning, lies in one row in order. */
function runAtStart(text: string): number {
  let length = 0
  while (length < text.length && runs.some((row) => row.includes(text.slice(0, length + 1)))) length += 1
  return length
}

/**
 * Whether a text is nothing but signs in order, of the alphabet, of the digits or of a keyboard's rows, with one sign left over
 * at the most.
 *
 * Example: `isInOrder('abcd1234')` → true; `isInOrder('qwertyuiop')` → true; `isInOrder('hat4rack')` → false.
 */
export function isInOrder(text: string): boolean {
  let [rest, loose] = [text, 0]
  while (rest.length > 0) {
    const run = runAtStart(rest)
    if (run < leastRun) loose += 1
    rest = rest.slice(run < leastRun ? 1 : run)
  }
  return loose <= 1
}

/**
 * Whether a text is one short piece over and over: one to four signs, or two halves that are the same.
 *
 * Example: `isRepeated('aaaaaaaa')` → true; `isRepeated('12341234')` → true; `isRepeated('barnbarn')` → true.
 */
export function isRepeated(text: string): boolean {
  const half = text.length % 2 === 0 ? [text.length / 2] : []
  return [1, 2, 3, 4, ...half].some((period) => text.length > period && text.slice(period) === text.slice(0, -period))
}

const isDayAndMonth = (a: number, b: number): boolean =>
  a >= 1 && b >= 1 && Math.min(a, b) <= 12 && Math.max(a, b) <= 31
const isYear = (year: number): boolean => year >= 1900 && year <= 2099

/**
 * Whether a text is a date in eight digits, whichever way it is written, with or without signs between.
 *
 * Example: `isDate('24.12.1999')` → true; `isDate('19991224')` → true; `isDate('83920174')` → false.
 */
export function isDate(text: string): boolean {
  const digits = text.replaceAll(/[ ./-]/g, '')
  if (!/^\d{8}$/.test(digits)) return false
  const at = (from: number, to: number): number => Number(digits.slice(from, to))
  if (isYear(at(0, 4)) && isDayAndMonth(at(4, 6), at(6, 8))) return true
  return isYear(at(4, 8)) && isDayAndMonth(at(0, 2), at(2, 4))
}
