import { describe, expect, it } from 'vitest'
import type { CastingFacts } from '@/lib/core/casting/figures'
import { cutThroughSeats } from '@/lib/core/options/cut-through'
import { arrivalHolds, cutThroughHolds } from '@/lib/core/options/own-holds'
import { ownHoldText } from '@/lib/words/own-holds'

/** Upright exhaust valve: its sealing circle of 1.6 in lies where its top cut does, 0.060 in over the new deck. */
const casting: CastingFacts = {
  milledWidthIn: 6,
  thicknessNewIn: 4.25,
  exhaustValveAngleDeg: 0,
  exhaustValveXIn: 3,
  exhaustValveZIn: 0.2,
  exhaustSealingIn: 1.6,
  exhaustTopCutIn: 1.6,
  exhaustTopCutOffsetIn: 0,
  exhaustSeatDepthIn: 0.06,
}
const gone = (valueIn: number) => ({ atIntakeEdgeIn: valueIn, atExhaustEdgeIn: valueIn, taperIn: 0 })
const after = (
  cut: { flatIn: number; angleIn: number },
  goneIn: number,
  readAfter: Parameters<typeof cutThroughSeats>[1] = [],
) =>
  cutThroughSeats(
    {
      cut: { ...cut, milledWidthIn: 6 },
      casting,
      engine: { layout: 'unknown', camInHead: null },
      deepEdge: 'exhaust',
      beforeCc: null,
      finishedCc: null,
      sinkIn: 0,
      heads: [
        {
          tag: 'T-0001',
          chambersCc: [],
          thicknessIn: null,
          metalGone: { gone: gone(goneIn), by: 'corners', takenAsFlat: false, differs: null },
          chambers: 4,
        },
      ],
    },
    readAfter,
  )

describe('a seat that a cut has gone through', () => {
  it('0.060 on record, 0.020 gone before: 0.045 more goes through it by 0.005', () => {
    const [seat, ...others] = after({ flatIn: 0.045, angleIn: 0 }, 0.02)
    expect(others).toEqual([])
    expect(seat).toMatchObject({ port: 'exhaust', ground: { by: 'record', valve: '1-exhaust' } })
    // 0.060 − 0.020 − 0.045 = −0.005.
    expect(seat?.byIn).toBeCloseTo(0.005, 12)
  })
  it('0.039 leaves 0.001: no hold', () => {
    expect(after({ flatIn: 0.039, angleIn: 0 }, 0.02)).toEqual([])
  })
  it('an angle part counts at the seat’s own place across', () => {
    // Upright circle of radius 0.8 at 3 of 6 in: nearest at x 3.8, where a wedge of 0.060 is 0.038 deep. By the plane:
    // (0.060 − 0.010 − 0.060·3.8/6)·cos φ, φ = atan(0.01): 0.012·0.99995 left; at 0.080: 0.050 − 0.05067 < 0.
    expect(after({ flatIn: 0, angleIn: 0.06 }, 0.01)).toEqual([])
    const [seat] = after({ flatIn: 0, angleIn: 0.08 }, 0.01)
    expect(seat?.byIn).toBeCloseTo((0.08 * 3.8) / 6 - 0.05, 5)
  })
  it('read after the cut: the reading counts, not the calculation', () => {
    const deep = { flatIn: 0.045, angleIn: 0 }
    expect(after(deep, 0.02, [{ valve: '2-exhaust', depthFromDeckNowIn: 0.002 }])).toEqual([])
    const [seat] = after({ flatIn: 0.03, angleIn: 0 }, 0.02, [{ valve: '2-exhaust', depthFromDeckNowIn: -0.003 }])
    expect(seat).toMatchObject({ port: 'exhaust', ground: { by: 'read', valve: '2-exhaust' } })
    expect(seat?.byIn).toBeCloseTo(0.003, 12)
    // A reading of the other port says nothing of this one.
    expect(after(deep, 0.02, [{ valve: '2-intake', depthFromDeckNowIn: 0.1 }])).toHaveLength(1)
  })
  it('is named by its port and cut, and said in thou with its ground', () => {
    const holds = cutThroughHolds(after({ flatIn: 0.045, angleIn: 0 }, 0.02), 41)
    expect(holds.map(({ cause }) => cause)).toEqual(['cut-through:exhaust:41'])
    expect(holds.map(ownHoldText)).toEqual([
      'The cut has gone through the sealing line of the exhaust seat by 5 thou (record less what is removed). Do not cut again without a new seat.',
    ])
  })
})

describe('an arrival that is not as it should be', () => {
  const orders = [
    { orderId: 'a', vendor: 'Tarn Grinding', number: 'O-0001' },
    { orderId: 'b', vendor: 'Fell Welding', number: 'O-0002' },
  ]
  const read = (id: string, orderId: string, kind: 'count' | 'damage', text: string) => ({
    id,
    seq: 1,
    kind,
    point: '',
    value: null,
    text,
    notTaken: null,
    step: { stepId: 'arrival-count' as const, occurrence: '', orderId },
  })
  it('opens a hold for what is short, wrong or damaged, by the last answer at that arrival', () => {
    const holds = arrivalHolds(
      [read('1', 'a', 'count', 'short'), read('2', 'b', 'count', 'wrong'), read('3', 'b', 'damage', 'damaged')],
      orders,
    )
    expect(holds.map(({ cause }) => cause)).toEqual(['count-short:1', 'count-wrong:2', 'damaged:3'])
    expect(holds.map(ownHoldText)).toEqual([
      'Arrival from Tarn Grinding, order O-0001: something is still there.',
      'Arrival from Fell Welding, order O-0002: wrong head or wrong part.',
      'Arrival from Fell Welding, order O-0002: damaged.',
    ])
    expect(arrivalHolds([read('1', 'a', 'count', 'short'), read('2', 'a', 'count', 'all')], orders)).toEqual([])
    expect(arrivalHolds([read('1', 'a', 'count', 'all'), read('2', 'a', 'damage', 'none')], orders)).toEqual([])
  })
})
