import { expect, it } from 'vitest'
import { fromOtherEdge } from '@/lib/core/casting/other-edge'

it('places are counted from the other edge, angles change their sign, heights and widths stay: 7 − 3 = 4', () => {
  const record = {
    milledWidthIn: 7,
    intakeValveXIn: 3,
    intakeValveAngleDeg: 23,
    exhaustValveAngleDeg: -14,
    intakeValveZIn: 0.5,
    openingCentreIn: 2.5,
    intakeFaceDeg: 10,
  }
  expect(fromOtherEdge(record)).toEqual({
    milledWidthIn: 7,
    intakeValveXIn: 4,
    intakeValveAngleDeg: -23,
    exhaustValveAngleDeg: 14,
    intakeValveZIn: 0.5,
    openingCentreIn: 4.5,
    intakeFaceDeg: 10,
  })
  expect(fromOtherEdge({ intakeValveXIn: 3 })).toBeNull()
})
