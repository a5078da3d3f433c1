import { dateFormat } from '../shop/formats'
import type { Day } from '../shop/calendar'
import type { ShopCalendar } from '../shop/open-calendar'

const dayMs = 24 * 60 * 60 * 1000
const numberOf = (day: Day): number => Math.round(Date.parse(`${day}T00:00:00Z`) / dayMs)

/**
 * The shop's clock on the wall as days since the first of 1970, with the part of the day behind the point. The clock's lead
 * over UTC is asked once for each day, so that many moments cost little; on the day of a change of the clocks it may be an
 * hour off.
 *
 * Example: America/Chicago, 2026-01-15 18:00 UTC → noon of that day, 20468.5. By definition.
 */
export function wallClock(zone: string): (at: Date) => number {
  const format = dateFormat('en-US', {
    ...{ timeZone: zone, calendar: 'gregory', numberingSystem: 'latn', hourCycle: 'h23' },
    ...{ year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit' },
  })
  const leads = new Map<number, number>()
  const leadAt = (noonMs: number): number => {
    const part = Object.fromEntries(format.formatToParts(noonMs).map(({ type, value }) => [type, Number(value)]))
    const { year = 1970, month = 1, day = 1, hour = 0, minute = 0 } = part
    return Date.UTC(year, month - 1, day, hour, minute) - noonMs
  }
  return (at) => {
    const day = Math.floor(at.getTime() / dayMs)
    const known = leads.get(day)
    const leadMs = known ?? leadAt((day + 0.5) * dayMs)
    if (known === undefined) leads.set(day, leadMs)
    return (at.getTime() + leadMs) / dayMs
  }
}

/**
 * Working days from one time on the wall to another: only open days count, each for the part of it that lies between.
 *
 * @param from days since the first of 1970, as `wallClock` gives them
 * @returns 0 when `to` is earlier
 *
 * Example: Friday noon to Monday noon, open Monday to Friday → 0.5 + 0.5 = 1. By definition.
 */
export function openDaysBetween({ openWeekdays, closedDays }: ShopCalendar): (from: number, to: number) => number {
  /** The first of 1970 was a Thursday (4). */
  const isWorkday = (day: number): boolean => openWeekdays.includes((((day + 4) % 7) + 7) % 7)
  const closed = closedDays
    .map(numberOf)
    .filter(isWorkday)
    .sort((a, b) => a - b)
  /** Open days before the beginning of a day, counted from the first of 1970. */
  const before = (day: number): number => {
    const weeks = Math.floor(day / 7)
    let open = weeks * openWeekdays.length
    for (let one = weeks * 7; one < day; one++) if (isWorkday(one)) open++
    return open - closed.filter((one) => one < day).length
  }
  const place = (at: number): number => {
    const day = Math.floor(at)
    const isOpen = isWorkday(day) && !closed.includes(day)
    return before(day) + (isOpen ? at - day : 0)
  }
  return (from, to) => Math.max(0, place(to) - place(from))
}
