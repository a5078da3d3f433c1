import { describe, expect, it, test } from 'vitest'
import { addDays, dayIn, daysBetween, isDay, startOfDay } from '@/lib/core/shop/calendar'

describe('days of the calendar', () => {
  it("is the shop's day, not the machine's", () => {
    // 02:30 UTC on New Year's Day is still the old year west of Greenwich: UTC−6 in Chicago, UTC+13 in Auckland.
    const at = new Date('2026-01-01T02:30:00Z')
    expect(dayIn('America/Chicago', at)).toBe('2025-12-31')
    expect(dayIn('UTC', at)).toBe('2026-01-01')
    expect(dayIn('Pacific/Auckland', at)).toBe('2026-01-01')
  })

  it('counts days across a clock change and a leap day', () => {
    expect(daysBetween('2026-03-07', '2026-03-09')).toBe(2) // clocks go forward on 8 March 2026 in the United States
    expect(daysBetween('2028-02-28', '2028-03-01')).toBe(2) // 2028 is a leap year
    expect(daysBetween('2026-03-09', '2026-03-07')).toBe(-2)
    expect(addDays('2026-12-31', 1)).toBe('2027-01-01')
  })

  it('knows days that do not exist', () => {
    expect(['2026-02-29', '2026-13-01', '26-01-01', ''].map(isDay)).toEqual([false, false, false, false])
    expect(isDay('2028-02-29')).toBe(true)
  })
})

test.each([
  ['America/New_York', '2026-03-08', '2026-03-08T05:00:00.000Z'],
  ['America/New_York', '2026-03-09', '2026-03-09T04:00:00.000Z'],
  ['Pacific/Auckland', '2026-07-01', '2026-06-30T12:00:00.000Z'],
  ['Asia/Kolkata', '2026-07-01', '2026-06-30T18:30:00.000Z'],
  ['UTC', '2026-01-01', '2026-01-01T00:00:00.000Z'],
])('%s: %s begins at %s', (zone, day, moment) => {
  expect(startOfDay(zone, day).toISOString()).toBe(moment)
})
