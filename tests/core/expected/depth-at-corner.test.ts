import { expect, it } from 'vitest'
import { depthAtCorner } from '@/lib/core/expected/corner'

it('a leaning cut over a width that no head has is not known at a corner', () => {
  const leaning = { shallowIn: 0.02, deepIn: 0.083 }
  expect(depthAtCorner(true, leaning, { edgeInsetIn: 0, milledWidthIn: 0 })).toBeNull()
  // 0.7 in inside of 7 in: a tenth of 0.063 less than at the edge.
  expect(depthAtCorner(true, leaning, { edgeInsetIn: 0.7, milledWidthIn: 7 })).toBeCloseTo(0.0767, 9)
})

it('a corner that would be touched beside the deck has no depth', () => {
  const leaning = { shallowIn: 0.02, deepIn: 0.083 }
  for (const edgeInsetIn of [7.001, -0.001, 1.7e308]) {
    expect(depthAtCorner(true, leaning, { edgeInsetIn, milledWidthIn: 7 })).toBeNull()
  }
})
