import { describe, expect, it } from 'vitest'
import { ShopClock, shopTime, workingDay } from '@/lib/demo/drive/clock'

const chicago = 'America/Chicago'

describe('working days', () => {
  it('leaves out the weekend, forward and back', () => {
    // 2026-03-02 is a Monday.
    expect(workingDay('2026-03-02', -1)).toBe('2026-02-27')
    expect(workingDay('2026-03-06', 1)).toBe('2026-03-09')
    expect(workingDay('2026-03-02', 5)).toBe('2026-03-09')
    expect(workingDay('2026-03-07', 0)).toBe('2026-03-07')
    expect(workingDay('2026-03-07', -1)).toBe('2026-03-06')
  })
})

describe('the time on the shop’s wall', () => {
  it('is right on both sides of a clock change', () => {
    // Chicago is UTC−6 in winter and UTC−5 from 2026-03-08, 02:00.
    expect(shopTime(chicago, '2026-03-06', '08:00').toISOString()).toBe('2026-03-06T14:00:00.000Z')
    expect(shopTime(chicago, '2026-03-09', '08:00').toISOString()).toBe('2026-03-09T13:00:00.000Z')
    expect(shopTime('Asia/Kolkata', '2026-03-09', '08:00').toISOString()).toBe('2026-03-09T02:30:00.000Z')
  })

  it('does not go back, nor past now, and work that runs late ends next morning', () => {
    const now = new Date('2026-03-09T20:00:00Z') // Monday, 15:00 in Chicago
    const clock = new ShopClock(chicago, now)
    clock.goTo(clock.ago(1, '16:50')) // Friday
    expect(clock.pass(20).toISOString()).toBe('2026-03-09T13:00:00.000Z')
    clock.goTo(clock.ago(1, '09:00'))
    expect(clock.now.toISOString()).toBe('2026-03-09T13:00:00.000Z')
    clock.goTo(clock.minutesAgo(10))
    expect(clock.pass(45)).toEqual(now)
  })
})
