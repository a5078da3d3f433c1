import { addDays, daysBetween, type Day } from '../shop/calendar'
import type { ShopCalendar } from '../shop/open-calendar'

/** How far ahead a day is worked out: two years. */
export const horizonDays = 730

/**
 * The days from today on, as the shop is open. A place in open time is a number: 2.25 is a quarter into the third open day.
 * Offsets are calendar days from today.
 */
export type OpenDays = {
  readonly today: Day
  /** Offset of each open day, in order. */
  readonly offsets: readonly number[]
  /** How many open days lie before each offset. */
  readonly before: readonly number[]
}

const midnightMs = (day: Day): number => Date.parse(`${day}T00:00:00Z`)
const dayMs = 24 * 60 * 60 * 1000
const epochDay = (day: Day): number => Math.round(midnightMs(day) / dayMs)
/**
 * The day of the week, 0 for Sunday to 6.
 *
 * Example: 2026-03-02 → 1, a Monday. Derived: the first day of 1970 was a Thursday.
 */
export const weekdayOf = (day: Day): number => (((epochDay(day) + 4) % 7) + 7) % 7

/** Whether anybody works on that day. */
export const isOpenOn = ({ openWeekdays, closedDays }: ShopCalendar, day: Day): boolean =>
  openWeekdays.includes(weekdayOf(day)) && !closedDays.includes(day)

/**
 * The open days of two years from today on.
 *
 * @param today a day of the calendar; days of the week 0 (Sunday) to 6
 * @returns offsets in calendar days from today
 *
 * Example: today a Friday, open Monday to Friday → offsets 0, 3, 4, 5, 6, 7, 10, … By definition.
 */
export function openDaysFrom(today: Day, calendar: ShopCalendar): OpenDays {
  const closed = new Set(calendar.closedDays.map((day) => daysBetween(today, day)))
  const first = weekdayOf(today)
  const [offsets, before]: [number[], number[]] = [[], []]
  for (let offset = 0; offset <= horizonDays; offset++) {
    before.push(offsets.length)
    if (calendar.openWeekdays.includes((first + offset) % 7) && !closed.has(offset)) offsets.push(offset)
  }
  return { today, offsets, before }
}

/**
 * The calendar day on which a place in open time lies: work that fills a day to its end is done on that day.
 *
 * @param place in open days from the beginning of today, 0 or more
 * @returns offset in calendar days from today; the last open day of the two years when it lies beyond
 *
 * Example: a Friday, open Monday to Friday: 1.0 → Friday (0); 1.2 → Monday (3). Derived: the open day number ceil(place) − 1.
 */
export function offsetAt({ offsets }: OpenDays, place: number): number {
  const number = Math.min(Math.max(0, Math.ceil(place - 1e-9) - 1), offsets.length - 1)
  return offsets[number] ?? horizonDays
}

/**
 * The beginning of a calendar day in open time; of a closed day: of the next open one.
 *
 * @param offset calendar days from today, 0 or more
 * @returns open days from the beginning of today
 *
 * Example: a Friday, open Monday to Friday: Saturday (1), Sunday (2) and Monday (3) → 1. By definition.
 */
export const placeOf = ({ before, offsets }: OpenDays, offset: number): number =>
  before[Math.min(Math.max(0, Math.round(offset)), horizonDays)] ?? offsets.length

/** The same as a day of the calendar. Example: 1.2 open days from Friday 2026-03-06 → 2026-03-09. By definition. */
export const dayAt = (open: OpenDays, place: number): Day => addDays(open.today, offsetAt(open, place))
