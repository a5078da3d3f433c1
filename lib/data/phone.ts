import 'server-only'
import {
  getCountries,
  getCountryCallingCode,
  isSupportedCountry,
  parsePhoneNumberFromString,
  type CountryCode,
} from 'libphonenumber-js/min'

/** A telephone number as it is kept: `e164` is '' when what was typed holds no valid number. */
export type ReadPhone = { readonly e164: string; readonly digits: string }

/** Figures with what people part them by; a comma, a slash or a word ends a number. */
const runs = /\+?\d[\d\s().-]*/g

/** The number in a text that may say more: "call my wife, 555-0199 after 6" holds 555-0199. The longest one counts. */
function numberIn(text: string): string {
  const found = [...text.matchAll(runs)].map(([run]) => run.trim())
  return found.toSorted((a, b) => figuresOf(b).length - figuresOf(a).length)[0] ?? ''
}

const figuresOf = (text: string): string => text.replace(/\D/g, '')

const known = (country: string): CountryCode => (isSupportedCountry(country) ? country : 'US')

/** The number in what was typed; `country`: whose numbers are typed without a country's code. */
export function readPhone(text: string, country: string): ReadPhone {
  const number = numberIn(text)
  const read = parsePhoneNumberFromString(number, known(country))
  return { e164: read?.isValid() ? read.number : '', digits: figuresOf(number) }
}

/**
 * What a link dials, and only that: the number with its country's code; a number of the place without one as it is typed;
 * '' when it can be neither, such as +1 with seven figures.
 */
export function dialled(text: string, country: string): string {
  const { e164, digits } = readPhone(text, country)
  const isLocal = !numberIn(text).startsWith('+') && digits.length >= 5 && digits.length <= 9
  return e164 === '' && isLocal ? digits : e164
}

/** "1" for the United States. */
export const callingCode = (country: string): string => getCountryCallingCode(known(country))

/** Countries that numbers can be read for, as two letters. */
export const phoneCountries = (): readonly string[] => getCountries()
