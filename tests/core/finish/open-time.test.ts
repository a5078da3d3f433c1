import { describe, expect, it } from 'vitest'
import { openDaysBetween, wallClock } from '@/lib/core/finish/open-time'
import { closedDaysText, openWeekdaysText, parseClosedDays, usualCalendar } from '@/lib/core/shop/open-calendar'

const clock = wallClock('America/Chicago')
/** Days since the first of 1970 at this hour of the wall: a day of UTC plus the part of it. */
const wall = (day: string, hour: number): number => Date.parse(`${day}T00:00:00Z`) / 86_400_000 + hour / 24

describe('the clock on the wall', () => {
  it('follows the zone, winter and summer', () => {
    // Chicago is 6 hours behind UTC in winter and 5 in summer.
    expect(clock(new Date('2026-01-15T18:00:00Z'))).toBeCloseTo(wall('2026-01-15', 12), 9)
    expect(clock(new Date('2026-07-15T18:00:00Z'))).toBeCloseTo(wall('2026-07-15', 13), 9)
    expect(clock(new Date('2026-01-15T03:00:00Z'))).toBeCloseTo(wall('2026-01-14', 21), 9)
  })
})

describe('working days between two times', () => {
  const between = openDaysBetween(usualCalendar)

  it('Friday noon to Monday noon is half a day and half a day', () => {
    expect(between(wall('2026-03-06', 12), wall('2026-03-09', 12))).toBeCloseTo(1, 9)
  })

  it('a week has five, a year of 52 weeks 260', () => {
    expect(between(wall('2026-03-03', 9), wall('2026-03-10', 9))).toBeCloseTo(5, 9)
    expect(between(wall('2025-03-04', 9), wall('2026-03-03', 9))).toBeCloseTo(260, 9)
  })

  it('a holiday does not count, nor does one on a Sunday; back in time is nothing', () => {
    const closed = openDaysBetween({ ...usualCalendar, closedDays: ['2026-03-04', '2026-03-08'] })
    expect(closed(wall('2026-03-03', 0), wall('2026-03-10', 0))).toBeCloseTo(4, 9)
    expect(closed(wall('2026-03-04', 6), wall('2026-03-04', 18))).toBe(0)
    // From noon of a holiday to noon of the next day: the half of that day.
    expect(closed(wall('2026-03-04', 12), wall('2026-03-05', 12))).toBeCloseTo(0.5, 9)
    expect(between(wall('2026-03-10', 9), wall('2026-03-03', 9))).toBe(0)
  })
})

describe('days on which the shop is closed', () => {
  it('are read as people write them, and read back', () => {
    const typed = 'Dec 24, 2026 to Dec 26, 2026\n2027-01-01; 4 July 2027'
    const read = parseClosedDays(typed)
    expect(read).toEqual({
      ok: true,
      value: ['2026-12-24', '2026-12-25', '2026-12-26', '2027-01-01', '2027-07-04'],
    })
    const text = closedDaysText(read.ok ? read.value : [])
    expect(text).toBe('Dec 24, 2026 to Dec 26, 2026\nJan 1, 2027\nJul 4, 2027')
    expect(parseClosedDays(text)).toEqual(read)
  })

  it.each(['Feb 30, 2026', 'soon', 'Dec 26, 2026 to Dec 24, 2026', '2026-13-01'])('%s is no day', (text) => {
    expect(parseClosedDays(text)).toMatchObject({ ok: false, refusal: { code: 'unreadable' } })
  })

  it('the days of the week are named from Monday on', () => {
    expect(openWeekdaysText([0, 6, 1])).toBe('Monday, Saturday, Sunday')
  })
})
