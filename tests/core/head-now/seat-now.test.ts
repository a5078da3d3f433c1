import { describe, expect, it } from 'vitest'
import type { CastingFacts } from '@/lib/core/casting/figures'
import { must } from '@/lib/core/errors'
import { deckNow } from '@/lib/core/head-now/deck-now'
import { flatGone, goneByCut } from '@/lib/core/head-now/gone'
import { recordFromDeckNow } from '@/lib/core/head-now/record-now'
import { nearestSeat, seatOfValve, type SeatNowInput } from '@/lib/core/head-now/seat-now'
import { placeCircle } from '@/lib/core/seat/circles'
import { circlePoints, newDeck, rad } from '../clearance/vectors'

const record: CastingFacts = {
  milledWidthIn: 7,
  exhaustValveXIn: 3,
  exhaustValveZIn: 0.5,
  exhaustValveAngleDeg: 15,
  exhaustSealingIn: 2,
  exhaustTopCutIn: 2.1,
  exhaustTopCutOffsetIn: 0.05,
  exhaustInsertIn: 2.2,
  exhaustInsertOffsetIn: 0.06,
  exhaustSeatDepthIn: 0.1292,
}
const flat = (depthIn: number) => must(deckNow(flatGone(depthIn), 'exhaust', 7))
const input = (more: Partial<SeatNowInput> = {}): SeatNowInput => ({
  record,
  port: 'exhaust',
  deck: flat(0.02),
  readings: [],
  ...more,
})
const read = (valve: string, depthFromDeckNowIn: number) => ({ valve, depthFromDeckNowIn })

describe('what a seat’s depth stands on', () => {
  const readings = [read('2-exhaust', 0.101), read('3-exhaust', 0.097), read('3-intake', 0.05)]

  it('a reading of the valve itself goes first', () => {
    const seat = must(seatOfValve('2-exhaust', input({ readings })))
    expect(seat).toMatchObject({ depthFromDeckNowIn: 0.101, ground: { by: 'read', valve: '2-exhaust' } })
  })

  it('then a like valve’s, the nearest of them; an intake is not like an exhaust', () => {
    const seat = must(seatOfValve('1-exhaust', input({ readings })))
    expect(seat).toMatchObject({
      depthFromDeckNowIn: 0.097,
      ground: { by: 'like', valve: '1-exhaust', like: '3-exhaust' },
    })
  })

  it('then the record less what is gone: 0.1292 − 0.020', () => {
    const seat = must(seatOfValve('1-exhaust', input({ readings: [read('1-intake', 0.05)] })))
    expect(seat.depthFromDeckNowIn).toBeCloseTo(0.1092, 12)
    expect(seat.ground.by).toBe('record')
  })

  it('with none of them it says what it needs', () => {
    expect(seatOfValve('1-exhaust', input({ deck: null }))).toMatchObject({
      ok: false,
      refusal: { code: 'missing', needs: ['seatReading', 'thicknessNewIn', 'removedBeforeIn'] },
    })
    expect(must(seatOfValve('1-exhaust', input({ deck: null, readings }))).depthFromDeckNowIn).toBe(0.097)
  })

  it('a valve placed absurdly far across is refused, on a deck that leans too', () => {
    const leaning = must(deckNow(goneByCut({ flatIn: 0, angleIn: 0.06, deepEdge: 'exhaust' }), 'exhaust', 7))
    const wrong = { ...record, exhaustValveXIn: -1.7976931e308 }
    for (const deck of [flat(0.02), leaning]) {
      expect(seatOfValve('2-exhaust', input({ record: wrong, deck, readings }))).toMatchObject({
        ok: false,
        refusal: { code: 'out-of-range' },
      })
    }
  })

  it('of a port the nearest counts, and how many were not read', () => {
    expect(must(nearestSeat({ ...input({ readings }), chambers: 4 }))).toMatchObject({
      ground: { by: 'read', valve: '3-exhaust' },
      notRead: 2,
    })
  })

  it('a flat deck brings a place nearer though nobody knows where across it lies', () => {
    expect(recordFromDeckNow({ portZIn: 2.1 }, flat(0.02)).portZIn).toBeCloseTo(2.08, 12)
  })

  it('0.140 gone: the deck went through the named circle by 0.0108', () => {
    expect(must(nearestSeat(input({ deck: flat(0.14) }))).depthFromDeckNowIn).toBeCloseTo(-0.0108, 12)
  })
})

describe('a head that leans', () => {
  const cut = { flatIn: 0.01, angleIn: 7 * Math.tan(rad(1)), deepEdge: 'exhaust' as const }
  const deck = must(deckNow(goneByCut(cut), 'exhaust', 7))
  const up = 0.1292 + 1.05 * Math.sin(rad(15))
  const axis = [Math.sin(rad(15)), 0, -Math.cos(rad(15))] as const
  /** The named circle in vectors: its points in the head, walked round. */
  const named = circlePoints([3 + 0.05 * axis[0], 0, up], [axis[0], 0, axis[2]], 1.05, 7200)
  const sealingCentre = [3, up - 0.05 * axis[2]] as const
  const over = newDeck(cut.flatIn, cut.angleIn, 7)

  it('by the record: the least height of the named circle, walked round in vectors', () => {
    const walked = Math.min(...named.map(([x, , z]) => over.height([x, z])))
    expect(must(nearestSeat(input({ deck }))).depthFromDeckNowIn).toBeCloseTo(walked, 8)
  })

  it('the sealing circle is where it was, seen from the deck now', () => {
    const { seat } = must(nearestSeat(input({ deck })))
    const placed = must(placeCircle(seat, 'sealing', true))
    expect(placed.centre.zIn).toBeCloseTo(over.height([sealingCentre[0], sealingCentre[1]]), 9)
    // Across, along the new deck from where it meets the shallow edge: the component along (cos 1°, sin 1°).
    const along = sealingCentre[0] * Math.cos(rad(1)) + (sealingCentre[1] - cut.flatIn) * Math.sin(rad(1))
    expect(placed.centre.xIn).toBeCloseTo(along, 9)
  })

  it('a reading that agrees with the record gives the same seat, and the valve leans by θ − Φ to it', () => {
    const byRecord = must(nearestSeat(input({ deck })))
    const byReading = must(nearestSeat(input({ deck, readings: [read('1-exhaust', byRecord.depthFromDeckNowIn)] })))
    expect(byReading.seat).toEqual(byRecord.seat)
    expect(byReading.seat.valveAngleDeg).toBeCloseTo(14, 9)
  })

  it('places of the record, in vectors: 1° and 0.010 gone', () => {
    const now = recordFromDeckNow({ portXIn: 0.2, portZIn: 2.1, dowelXIn: 0.8, camXIn: 2 }, deck)
    expect(now.portZIn).toBeCloseTo(over.height([0.2, 2.1]), 12)
    expect(now.portXIn).toBeCloseTo(0.2 * Math.cos(rad(1)) + 2.09 * Math.sin(rad(1)), 12)
    expect(now.dowelXIn).toBeCloseTo(0.8 / Math.cos(rad(1)), 12)
    // Half a place is none on a deck that leans.
    expect(now.camXIn).toBeUndefined()
  })

  it('seen from a cut that is deep at the other edge it leans the other way', () => {
    const other = must(deckNow(goneByCut(cut), 'intake', 7))
    expect(other.angleRad).toBeCloseTo(-rad(1), 12)
    expect(other.flatIn).toBeCloseTo(0.01 + 7 * Math.tan(rad(1)), 12)
    expect(recordFromDeckNow({ intakeValveAngleDeg: 10 }, other).intakeValveAngleDeg).toBeCloseTo(11, 9)
  })

  it('a canted valve keeps its cant: walked round in vectors', () => {
    const canted = { ...record, exhaustValveCantDeg: 8 }
    const { seat, depthFromDeckNowIn } = must(nearestSeat(input({ record: canted, deck })))
    const [tx, ty] = [Math.tan(rad(15)), Math.tan(rad(8))]
    const length = Math.hypot(tx, ty, 1)
    const way = [tx / length, ty / length, -1 / length] as const
    const centreUp = 0.1292 + 1.05 * Math.hypot(way[0], way[1])
    const points = circlePoints([3 + 0.05 * way[0], 0, centreUp], [way[0], way[1], way[2]], 1.05, 7200)
    expect(depthFromDeckNowIn).toBeCloseTo(Math.min(...points.map(([x, , z]) => over.height([x, z]))), 7)
    const sealing = must(placeCircle(seat, 'sealing', true))
    const seen = sealing.centre.zIn - Math.hypot(sealing.axis.x, sealing.axis.y)
    const rim = circlePoints([3, 0, centreUp - 0.05 * way[2]], [way[0], way[1], way[2]], 1, 7200)
    expect(seen).toBeCloseTo(Math.min(...rim.map(([x, , z]) => over.height([x, z]))), 7)
  })
})
