import { describe, expect, it } from 'vitest'
import { placeOf } from '@/app/_components/shell/places'

describe('the place that an address belongs to', () => {
  it.each([
    ['/counter', 'counter'],
    ['/counter/findings/1', 'counter'],
    ['/stations/mill/heads/1', 'stations'],
    ['/back-room/people/new', 'back-room'],
    ['/jobs/26-0014', undefined],
    ['/counters', undefined],
    ['/', undefined],
  ])('%s → %s', (address, place) => {
    expect(placeOf(address)).toBe(place)
  })
})
