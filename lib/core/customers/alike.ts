import { foldedWords } from '../find/fold'

/** How many slips two words may have, the longer of so many letters, and still be one. Common practice. */
const slipsIn = (letters: number): number => (letters <= 3 ? 0 : letters <= 7 ? 1 : 2)

/**
 * Slips between two words: a letter too many, too few, another one, or two that changed places.
 * Derived: optimal string alignment distance, by its recurrence.
 * Example: "smith", "smyth" → 1; "marie", "maire" → 1.
 */
export function slipsBetween(a: string, b: string): number {
  const [first, second] = [[...a], [...b]]
  const rows: number[][] = [Array.from({ length: second.length + 1 }, (_, at) => at)]
  for (const [i, letter] of first.entries()) {
    const above = rows[i] ?? []
    const row = [i + 1]
    for (const [j, other] of second.entries()) {
      const least = Math.min((row[j] ?? 0) + 1, (above[j + 1] ?? 0) + 1, (above[j] ?? 0) + (letter === other ? 0 : 1))
      const isSwapped = i > 0 && j > 0 && letter === second[j - 1] && first[i - 1] === other
      row.push(isSwapped ? Math.min(least, (rows[i - 1]?.[j - 1] ?? 0) + 1) : least)
    }
    rows.push(row)
  }
  return rows.at(-1)?.at(-1) ?? 0
}

/** The same word but for a slip; one letter stands for a word that begins with it. */
function isSameWord(a: string, b: string): boolean {
  if (a.length === 1 || b.length === 1) return a.charAt(0) === b.charAt(0)
  return slipsBetween(a, b) <= slipsIn(Math.max(a.length, b.length))
}

/**
 * Whether two names may be one person's: the same words but for a slip in each, in any order, with spaces and hyphens or
 * without; a name with fewer words may be short for one with more, from two words on, or when its one word of four
 * letters or more is in the other as it is.
 * Derived: each word of the shorter name has a word of its own in the longer one.
 * Example: "Jon Smyth", "Smith, John A." → true; "Ann Lee", "Ben Lee" → false.
 */
export function namesResemble(a: string, b: string): boolean {
  const [fewer, more] = [foldedWords(a), foldedWords(b)].toSorted((x, y) => x.length - y.length)
  if (!fewer || !more || fewer.length === 0) return false
  if (fewer.join('') === more.join('')) return true
  const only = fewer[0] ?? ''
  if (fewer.length === 1 && more.length > 1) return only.length >= 4 && more.includes(only)
  if (fewer.length === 1) return only.length > 1 && isSameWord(only, more[0] ?? '')
  return eachHasItsOwn(fewer, more, false)
}

/** Whether the words can be paired off; initials alone name nobody: one pair at least is of whole words. */
function eachHasItsOwn(fewer: readonly string[], more: readonly string[], isNamed: boolean): boolean {
  const [word, ...rest] = fewer
  if (word === undefined) return isNamed
  return more.some((other, at) => {
    const isWhole = word.length > 1 && other.length > 1
    return isSameWord(word, other) && eachHasItsOwn(rest, more.toSpliced(at, 1), isNamed || isWhole)
  })
}

/**
 * Whether two telephone numbers, as their figures, may be one: equal, or one is the end of the other.
 * Derived: a number without its country's or town's code is the end of the whole one; seven figures are a whole local one.
 * Example: "5550139", "15550139" → true.
 */
export function phonesResemble(a: string, b: string): boolean {
  const [short, long] = a.length < b.length ? [a, b] : [b, a]
  const bare = short.replace(/^0/, '')
  return bare.length >= localFigures && long.endsWith(bare)
}

export const localFigures = 7
