import { describe, expect, it } from 'vitest'
import { touchOffDepth } from '../../../lib/core/at-mill/touch-off'
import type { RouteFacts } from '../../../lib/core/route/types'
import { cornersOnOnePlane } from '../../../lib/core/straightness/corner-plane'

type Reading = RouteFacts['readings'][number]
const at = (seq: number, kind: 'cut-depth' | 'touch-off', value: number | null, text = ''): Reading => ({
  id: `${seq}${kind}`,
  seq,
  kind,
  point: '',
  value,
  text,
  notTaken: null,
  step: { stepId: 'flat-cut', occurrence: '', orderId: null },
})
const depth = (seq: number, valueIn: number) => at(seq, 'cut-depth', valueIn)
const touch = (seq: number, text: string) => at(seq, 'touch-off', null, text)

describe('depth from the touch-off', () => {
  it('is always the total: the last counts', () => {
    expect(touchOffDepth([])).toEqual({ totalIn: 0, fromTouchOffIn: 0, seq: null, restarts: 0 })
    expect(touchOffDepth([depth(3, 0.0155), depth(5, 0.018)])).toEqual({
      totalIn: 0.018,
      fromTouchOffIn: 0.018,
      seq: 5,
      restarts: 0,
    })
    expect(touchOffDepth([depth(3, 0.0155), touch(4, 'same'), depth(5, 0.018)]).totalIn).toBe(0.018)
  })

  it('a new touch-off starts the count again, on top of what was cut', () => {
    const cut = touchOffDepth([depth(3, 0.0155), touch(5, 'new'), depth(5, 0.002), depth(6, 0.0025)])
    expect(cut).toMatchObject({ fromTouchOffIn: 0.0025, seq: 6, restarts: 1 })
    expect(cut.totalIn).toBeCloseTo(0.018, 12)
    expect(touchOffDepth([depth(3, 0.0155), touch(5, 'new'), depth(5, 0.002)]).fromTouchOffIn).toBe(0.002)
    expect(touchOffDepth([depth(3, 0.0155), touch(5, 'new')])).toMatchObject({ totalIn: 0.0155, fromTouchOffIn: 0 })
  })
})

describe('the fourth corner', () => {
  const four = (i1: number, e1: number, i2: number, e2: number) =>
    cornersOnOnePlane({ 'intake-1': i1, 'exhaust-1': e1, 'intake-2': i2, 'exhaust-2': e2 })

  it('lies with the other three, within 3 thou, on any plane', () => {
    // Tilted and tapered: 4.5 + 0.02·x + 0.01·y at the four corners of a rectangle.
    expect(four(4.5, 4.52, 4.51, 4.53)).toBe(true)
    expect(four(4.5, 4.52, 4.51, 4.533)).toBe(true)
    expect(four(4.5, 4.52, 4.51, 4.5331)).toBe(false)
    expect(four(4.5, 4.52, 4.61, 4.53)).toBe(false)
    expect(cornersOnOnePlane({ 'intake-1': 4.5, 'exhaust-1': 4.5, 'intake-2': 4.5 })).toBeNull()
  })
})
