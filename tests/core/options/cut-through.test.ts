import { describe, expect, it } from 'vitest'
import type { CastingFacts } from '@/lib/core/casting/figures'
import { cutAsMade } from '@/lib/core/options/cut-as-made'
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

describe('a cut that came out deep at the wrong edge', () => {
  // The record's deep edge is the exhaust edge; the valve's circle of radius 0.8 stands upright at 2 of 6 in from the
  // intake edge. Deep at the intake edge by 0.080: nearest there is its side at x 1.2, where the wedge is 0.080·(6 − 1.2)/6
  // = 0.064 deep; 0.060 − 0.064 = −0.004, by the plane times cos φ, φ = atan(0.08/6): 0.99991.
  const near: CastingFacts = { ...casting, exhaustValveXIn: 2 }
  const judged = (edges: { shallowIn: number; deepIn: number }) => {
    const made = cutAsMade(edges, 'exhaust', near)
    return made
      ? cutThroughSeats(
          {
            cut: { flatIn: made.flatIn, angleIn: made.angleIn, milledWidthIn: 6 },
            casting: made.casting,
            engine: { layout: 'unknown', camInHead: null },
            deepEdge: made.deepEdge,
            beforeCc: null,
            finishedCc: null,
            sinkIn: 0,
            heads: [
              {
                tag: 'T-0001',
                chambersCc: [],
                thicknessIn: null,
                metalGone: { gone: gone(0), by: 'corners', takenAsFlat: false, differs: null },
                chambers: 4,
              },
            ],
          },
          [],
        )
      : null
  }

  it('is told by its lesser depth and the edge that it is deep at', () => {
    expect(cutAsMade({ shallowIn: 0.08, deepIn: 0.01 }, 'exhaust', near)).toMatchObject({
      deepEdge: 'intake',
      flatIn: 0.01,
      angleIn: 0.07,
      casting: { exhaustValveXIn: 4 },
    })
    expect(cutAsMade({ shallowIn: 0.01, deepIn: 0.08 }, 'exhaust', near)).toMatchObject({
      deepEdge: 'exhaust',
      flatIn: 0.01,
      angleIn: 0.07,
      casting: { exhaustValveXIn: 2 },
    })
    // A hair under nothing is the gauge's.
    expect(cutAsMade({ shallowIn: -0.0004, deepIn: 0.06 }, 'intake', near)?.flatIn).toBe(0)
    expect(cutAsMade({ shallowIn: 0.08, deepIn: 0 }, 'exhaust', { exhaustValveXIn: 2 })).toBeNull()
  })

  it('goes through the seat that lies at that edge, which the planned cut would have spared', () => {
    // As planned, at its side toward the exhaust edge, x 2.8: 0.060 − 0.080·2.8/6 = 0.0227 left.
    expect(judged({ shallowIn: 0, deepIn: 0.08 })).toEqual([])
    const [seat] = judged({ shallowIn: 0.08, deepIn: 0 }) ?? []
    expect(seat?.port).toBe('exhaust')
    expect(seat?.byIn).toBeCloseTo(0.004, 5)
    // 0.070: 0.056 at x 1.2, 0.004 left.
    expect(judged({ shallowIn: 0.07, deepIn: 0 })).toEqual([])
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
