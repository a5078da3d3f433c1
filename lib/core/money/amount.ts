import { numberFormat } from '../shop/formats'
import { ok, refuse, type Result } from '../errors'
import { mostMinor } from './limits'

/** How a shop writes money: decimals of its currency (0 to 3) and its locale, "en-US". */
export type AmountManner = { readonly currencyExponent: number; readonly locale: string }

type Marks = { readonly group: string; readonly decimal: string }

/**
 * An amount as people type it, in minor units of the currency: "$1,250.00", "1250", "1.250,00", "1 250,00", "USD 95".
 * Currency signs and letters at the ends are left out. Where a point and a comma both stand in it, the last of them is the
 * decimal mark. A single mark before exactly three digits is read as the shop's locale has it: "1,250" is 1250 in en-US and
 * 1.25 where the comma is the decimal mark, which a currency of two decimals then refuses.
 * @returns 0 to 2 000 000 000 minor units; refused as `unreadable`
 * Example: "$1,250.00" in en-US with 2 decimals → 125000.
 */
export function parseAmount(text: string, manner: AmountManner): Result<number> {
  const { currencyExponent: exponent, locale } = manner
  const bare = text.trim().replace(/^\p{L}{0,3}\s*\p{Sc}?\s*|\s*\p{Sc}?\s*\p{L}{0,3}$/gu, '')
  const split = splitAmount(bare.replace(/[\u00a0\u202f\s]/g, ' ').replaceAll('’', "'"), marksOf(locale), exponent)
  if (!split || split.decimals.length > exponent) return unreadable(manner)
  const minor = Number(`${split.whole}${split.decimals.padEnd(exponent, '0')}`)
  return minor > mostMinor ? refuse('unreadable', 'This amount is too large. Check it.') : ok(minor)
}

const unreadable = (manner: AmountManner) => refuse('unreadable', `Type an amount such as ${sample(manner)}.`)

function splitAmount(text: string, marks: Marks, exponent: number) {
  const [last = ''] = /[.,](?=[^.,]*$)/.exec(text) ?? []
  if (last === '') return whole(text, '', " '")
  const at = text.lastIndexOf(last)
  const other = last === '.' ? ',' : '.'
  const isGroup = !text.includes(other) && (text.indexOf(last) !== at || isGroupMark(text, at, last, marks, exponent))
  return isGroup ? whole(text, '', last) : whole(text.slice(0, at), text.slice(at + 1), `${other} '`)
}

/** "1,250": the mark stands before three digits, and the shop's locale groups by it. */
const isGroupMark = (text: string, at: number, mark: string, marks: Marks, exponent: number): boolean =>
  mark === marks.group && exponent < 3 && text.length - at === 4 && at <= 3

/** Digits, in groups of three where they are grouped by one of `groups`. */
function whole(text: string, decimals: string, groups: string) {
  const isPlain = /^\d{1,10}$/.test(text)
  const mark = [...groups].find((group) => text.includes(group))
  const isGrouped = mark !== undefined && groupedBy(mark).test(text)
  if (!(isPlain || isGrouped) || !/^\d*$/.test(decimals)) return null
  return { whole: text.replace(/\D/g, ''), decimals }
}

const groupedBy = (mark: string): RegExp => new RegExp(`^\\d{1,3}(?:\\${mark}\\d{3}){1,3}$`)

function marksOf(locale: string): Marks {
  const parts = numberFormat(locale, {}).formatToParts(1234567.5)
  const mark = (type: string): string => parts.find((part) => part.type === type)?.value ?? ''
  return { group: mark('group'), decimal: mark('decimal') }
}

function sample({ currencyExponent: exponent, locale }: AmountManner): string {
  if (exponent === 0) return '125'
  return `125 or 125${marksOf(locale).decimal}${'50'.padEnd(exponent, '0').slice(0, exponent)}`
}

/** An amount as it is typed again: 12550 with exponent 2 → "125.50". `parseAmount` reads it back, in every locale. */
export function formatAmount(minor: number, exponent: number): string {
  const digits = String(minor).padStart(exponent + 1, '0')
  return exponent === 0 ? digits : `${digits.slice(0, -exponent)}.${digits.slice(-exponent)}`
}
