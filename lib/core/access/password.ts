import { ok, refuse, type Result } from '../errors'
import { commonWords } from './common-words'
import { isDate, isInOrder, isRepeated } from './password-patterns'

/** The least that is taken, what is advised, and the most that is hashed. */
export const leastPassword = 8
export const advisedPassword = 15
export const mostPassword = 200

const lookalikes: Readonly<Record<string, string>> = {
  ...{ '0': 'o', '1': 'i', '3': 'e', '4': 'a', '5': 's', '7': 't', '8': 'b', '9': 'g' },
  ...{ '@': 'a', $: 's', '!': 'i', '+': 't', '|': 'l', '€': 'e', '£': 'l' },
}

const asLetters = (text: string): string =>
  [...text]
    .map((sign) => lookalikes[sign] ?? sign)
    .filter((sign) => /\p{L}/u.test(sign))
    .join('')

const small = (text: string): string => text.normalize('NFKD').replaceAll(/\p{M}/gu, '').toLowerCase()

/**
 * The words that a password may be read as: without the digits and signs around it, and with digits and signs that stand
 * for letters as those letters.
 *
 * Range: text. Derived: four ways to take off what is no letter (nowhere, in front, behind, at both ends), each read so.
 * Example: `plainForms('P@ssw0rd2026!')` → holds "password".
 */
export function plainForms(password: string): string[] {
  const text = small(password)
  const [behind, before] = [/[^\p{L}]+$/u, /^[^\p{L}]+/u]
  const forms = [text, text.replace(behind, ''), text.replace(before, ''), text.replace(behind, '').replace(before, '')]
  // "1" stands for "l" as often as for "i".
  const both = forms.flatMap((form) => [asLetters(form), asLetters(form.replaceAll('1', 'l'))])
  return [...new Set(both)].filter((form) => form !== '')
}

/** The fewest words of a list that a text can be parted into without a rest; Infinity: it cannot. */
function fewestWords(text: string, isWord: (part: string) => boolean): number {
  const fewest = [0, ...Array<number>(text.length).fill(Infinity)]
  for (let end = 1; end <= text.length; end += 1) {
    for (let start = Math.max(0, end - 30); start < end; start += 1) {
      const words = (fewest[start] ?? Infinity) + 1
      if (words < (fewest[end] ?? Infinity) && isWord(text.slice(start, end))) fewest[end] = words
    }
  }
  return fewest[text.length] ?? Infinity
}

/** Names of three letters and more: shorter ones are in half of all words. */
const wordsIn = (texts: readonly string[]): Set<string> =>
  new Set(texts.flatMap((text) => small(text).match(/\p{L}{3,}/gu) ?? []))

/** One common word whatever its length; two while the password is shorter than advised. */
const isCommon = (forms: readonly string[], length: number): boolean => {
  const most = length < advisedPassword ? 2 : 1
  return forms.some((form) => fewestWords(form, (part) => commonWords.has(part)) <= most)
}

const isOneOfEach = (first: string, second: string, own: ReadonlySet<string>): boolean =>
  (own.has(first) && commonWords.has(second)) || (commonWords.has(first) && own.has(second))

/** Nothing but names, or a name and a common word. */
const isOwn = (forms: readonly string[], own: ReadonlySet<string>): boolean =>
  forms.some(
    (form) =>
      fewestWords(form, (part) => own.has(part)) < Infinity ||
      [...form].some((_, at) => isOneOfEach(form.slice(0, at), form.slice(at), own)),
  )

const said = {
  short: `A password needs at least ${leastPassword} characters; ${advisedPassword} or more are better.`,
  long: `A password may have at most ${mostPassword} characters.`,
  repeated: 'The same characters over and over are tried first. Take another; a short sentence is easy to remember.',
  order: 'Characters in order are tried first. Take another; a short sentence is easy to remember.',
  date: 'A date is tried first. Take another; a short sentence is easy to remember.',
  common: 'This password is among the first that anyone would try. Take another; a short sentence is easy to remember.',
  own: 'Names of the shop and its people are tried first. Take another; a short sentence is easy to remember.',
}

/**
 * A password that somebody may have, or why not: its length, and that it is not what anyone tries first. No rule asks for
 * digits or signs.
 *
 * Range: text. Formula: 8 to 200 characters; no piece over and over, no characters in order, no date; no common word
 * (two, below 15 characters) and no name in `own` with nothing else than digits and signs around it.
 * Source: OWASP ASVS 5.0.0, chapter V6, as its rules on length, composition and common passwords.
 * Example: `acceptablePassword('letmein2026', [])` → refused; `acceptablePassword('a plum deck and a square hole', [])` → ok.
 */
export function acceptablePassword(password: string, own: readonly string[]): Result<string> {
  const length = [...password].length
  if (length < leastPassword) return refuse('invalid', said.short)
  if (password.length > mostPassword) return refuse('invalid', said.long)
  const text = small(password)
  if (isRepeated(text)) return refuse('invalid', said.repeated)
  if (isInOrder(text)) return refuse('invalid', said.order)
  if (isDate(text)) return refuse('invalid', said.date)
  const forms = plainForms(password)
  if (isCommon(forms, length)) return refuse('invalid', said.common)
  if (isOwn(forms, wordsIn(own))) return refuse('invalid', said.own)
  return ok(password)
}
