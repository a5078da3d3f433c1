import { ok, refuse, type Result } from '../errors'
import { addDays, daysBetween, isDay, type Day } from './calendar'

/** When the shop works. */
export type ShopCalendar = {
  /** Days of the week, 0 for Sunday to 6; at least one. */
  readonly openWeekdays: readonly number[]
  /** Holidays and other days on which nobody works, in order. */
  readonly closedDays: readonly Day[]
}

/** Monday to Friday [common practice]. */
export const usualCalendar: ShopCalendar = { openWeekdays: [1, 2, 3, 4, 5], closedDays: [] }

/** So many days the owner may name: years of holidays. */
export const mostClosedDays = 400

export const weekdayNames = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const
const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'] as const

const two = (number: string): string => number.padStart(2, '0')

/** One day as typed: "2026-12-25", "Dec 25, 2026", "25 December 2026"; null: no day. */
function dayTyped(text: string): Day | null {
  const plain = text.trim().toLowerCase().replaceAll(/[.,]/g, ' ').replaceAll(/\s+/g, ' ')
  if (isDay(plain)) return plain
  const [, name, date, year] = /^([a-z]{3,9}) (\d{1,2}) (\d{4})$/.exec(plain) ?? []
  const [, date2, name2, year2] = /^(\d{1,2}) ([a-z]{3,9}) (\d{4})$/.exec(plain) ?? []
  const month = months.findIndex((one) => (name ?? name2 ?? '-').startsWith(one)) + 1
  const day = `${year ?? year2}-${two(String(month))}-${two(date ?? date2 ?? '')}`
  return month > 0 && isDay(day) ? day : null
}

/**
 * Days on which the shop is closed, one a line; "Dec 24, 2026 to Jan 1, 2027" is all the days between.
 *
 * Example: "Dec 25, 2026\n2027-01-01" → 2026-12-25, 2027-01-01.
 */
export function parseClosedDays(text: string): Result<Day[]> {
  const days = new Set<Day>()
  for (const line of text.split(/[\n;]/)) {
    if (line.trim() === '') continue
    const [from, to] = line.split(/ to | – |–/).map(dayTyped)
    const last = to === undefined ? from : to
    if (!from || !last || last < from || daysBetween(from, last) > mostClosedDays) {
      return refuse('unreadable', `“${line.trim()}” is no day. Type a day such as Dec 25, 2026, one a line.`)
    }
    for (let day = from; day <= last; day = addDays(day, 1)) days.add(day)
    if (days.size > mostClosedDays) return refuse('out-of-range', `At most ${mostClosedDays} days.`)
  }
  return ok([...days].sort())
}

const written = (day: Day): string => {
  const [year = '', month = '', date = ''] = day.split('-')
  const name = months[Number(month) - 1] ?? ''
  return `${name.charAt(0).toUpperCase()}${name.slice(1)} ${Number(date)}, ${year}`
}

/** The same as text again: runs of days as one line. */
export function closedDaysText(days: readonly Day[]): string {
  const runs: [Day, Day][] = []
  for (const day of days) {
    const run = runs.at(-1)
    if (run && addDays(run[1], 1) === day) run[1] = day
    else runs.push([day, day])
  }
  return runs.map(([from, to]) => (from === to ? written(from) : `${written(from)} to ${written(to)}`)).join('\n')
}

/** "Monday, Tuesday, …" from Monday on. */
export const openWeekdaysText = (days: readonly number[]): string =>
  [1, 2, 3, 4, 5, 6, 0].flatMap((day) => (days.includes(day) ? [weekdayNames[day] ?? ''] : [])).join(', ')
