import { dateFormat } from './formats'

/** A day of the calendar: "2026-03-14". */
export type Day = string

const gregorian = {
  calendar: 'gregory',
  numberingSystem: 'latn',
  year: 'numeric',
  month: '2-digit',
  day: '2-digit',
} as const

/** The calendar day at a moment in a time zone, whatever the zone of the machine. */
export function dayIn(zone: string, at: Date): Day {
  const [month = '', day = '', year = ''] = dateFormat('en-US', { ...gregorian, timeZone: zone })
    .format(at)
    .split('/')
  return `${year.padStart(4, '0')}-${month}-${day}`
}

const dayMs = 24 * 60 * 60 * 1000
const midnightMs = (day: Day): number => Date.parse(`${day}T00:00:00Z`)

/** Calendar days from one day to another; below zero when `to` is earlier. No clock change can shift it: days only. */
export const daysBetween = (from: Day, to: Day): number => Math.round((midnightMs(to) - midnightMs(from)) / dayMs)

export const addDays = (day: Day, days: number): Day =>
  new Date(midnightMs(day) + days * dayMs).toISOString().slice(0, 10)

/** Whether the text names a day that exists. */
export const isDay = (text: string): boolean =>
  /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(midnightMs(text)) && addDays(text, 0) === text

/** The moment at which a calendar day begins in a time zone, to the minute; a change of the clocks does not shift it. */
export function startOfDay(zone: string, day: Day): Date {
  const minuteMs = 60 * 1000
  let [early, late] = [midnightMs(day) - dayMs, midnightMs(day) + dayMs]
  while (late - early > minuteMs) {
    const middle = early + Math.floor((late - early) / 2 / minuteMs) * minuteMs
    if (dayIn(zone, new Date(middle)) < day) early = middle
    else late = middle
  }
  return new Date(late)
}
