import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { must } from '../../../lib/core/errors'
import { insertMarks, sealingMargin, topCutLoss } from '../../../lib/core/seat/after-cut'
import type { Seat } from '../../../lib/core/seat/circles'
import { circlePoints, newDeck, rad, type V3 } from '../clearance/vectors'

const width = 7
const flat = (flatIn: number) => ({ flatIn, angleIn: 0, milledWidthIn: null })
const angled = (flatIn: number, angleDeg: number) => ({
  flatIn,
  angleIn: width * Math.tan(rad(angleDeg)),
  milledWidthIn: width,
})
const seat: Seat = {
  circles: {
    insert: { diameterIn: 2.25, offsetIn: 0.03 },
    'top-cut': { diameterIn: 2.1, offsetIn: 0.05 },
    sealing: { diameterIn: 2.0 },
  },
  gauge: { depthIn: 0.02, circle: 'top-cut' },
  xIn: 3,
  valveAngleDeg: 15,
}

/** Heights all round a circle of the seat over the new deck, placed from the gauge by vectors. */
function heights(cut: ReturnType<typeof angled>, given: typeof seat, name: keyof typeof seat.circles) {
  const deck = newDeck(cut.flatIn, cut.angleIn, width)
  const lean = rad(given.valveAngleDeg ?? NaN)
  const axis: V3 = [Math.sin(lean), 0, -Math.cos(lean)]
  const offset = (of: keyof typeof seat.circles) => (of === 'sealing' ? 0 : (given.circles[of].offsetIn ?? NaN))
  const at = (of: keyof typeof seat.circles, z0: number, count?: number) => {
    const along = offset(of)
    const centre: V3 = [(given.xIn ?? NaN) + along * axis[0], 0, z0 + along * axis[2]]
    return circlePoints(centre, axis, (given.circles[of].diameterIn ?? NaN) / 2, count)
  }
  // The sealing circle's height that puts the gauged circle's lowest point at the depth read.
  const lowestAtZero = Math.min(...at(given.gauge.circle, 0).map(([, , z]) => z))
  const z0 = (given.gauge.depthIn ?? NaN) - lowestAtZero
  return at(name, z0, 72_000).map(([x, , z]) => ({ x, height: deck.height([x, z]) }))
}
const shareUnder = (points: readonly { height: number }[]) =>
  points.filter(({ height }) => height < 0).length / points.length

describe('top cut lost', () => {
  it('no cut loses nothing, though the ring stand flush with the deck', () => {
    for (const depthIn of [0, 0.02]) {
      for (const valveAngleDeg of [0, 15, -23]) {
        const flush = { ...seat, valveAngleDeg, gauge: { ...seat.gauge, depthIn } }
        expect(must(topCutLoss(flat(0), flush)).lostShare).toBe(0)
      }
    }
  })

  it('a flat cut to the ring’s centre height loses half the circle; to its far edge, all', () => {
    const swing = 1.05 * Math.sin(rad(15)) // 2.1/2
    expect(must(topCutLoss(flat(0.02 + swing), seat)).lostShare).toBeCloseTo(0.5, 9)
    const steep = { ...seat, valveAngleDeg: 10, gauge: { ...seat.gauge, depthIn: 0 } }
    const far = 2 * 1.05 * Math.sin(rad(10))
    expect(must(topCutLoss(flat(far + 1e-6), steep)).lostShare).toBe(1)
    expect(must(topCutLoss(flat(far - 1e-3), steep)).lostShare).toBeLessThan(1)
  })

  it.each([
    [0.03, 0, 15],
    [0.1, 0, -15],
    [0.02, 1, 15],
    [0.01, 0.5, -10],
    [0.005, 2, 4],
  ])('flat %s and %s° at a valve of %s°: the share by going round it [derived]', (flatIn, angleDeg, valveAngleDeg) => {
    const given = { ...seat, valveAngleDeg }
    const cut = angled(flatIn, angleDeg)
    const points = heights(cut, given, 'top-cut')
    const loss = must(topCutLoss(cut, given))
    expect(loss.lostShare).toBeCloseTo(shareUnder(points), 3)
    expect(loss.lostShare).toBeGreaterThan(0)
    const lowest = points.reduce((least, one) => (one.height < least.height ? one : least))
    expect(loss.nearest).toBe(lowest.x < 3 ? 'shallow' : 'deep')
  })

  it('a valve square to the new deck: all of it or nothing', () => {
    const square = { ...seat, valveAngleDeg: 0 }
    expect(must(topCutLoss(flat(0.019), square)).lostShare).toBe(0)
    expect(must(topCutLoss(flat(0.021), square))).toEqual({ lostShare: 1, nearest: 'all round' })
    // Turned square by the cut itself: θ′ = 1° − 1° = 0.
    const turned = must(topCutLoss(angled(0, 1), { ...seat, valveAngleDeg: 1 }))
    expect([0, 1]).toContain(turned.lostShare)
  })

  it('an angle cut of the same volume takes less top cut when the near edge is on the shallow side', () => {
    // Opening centred at mid-width: angle part w takes what a flat cut of w/2 takes.
    const angle = angled(0, 0.5)
    const sameVolume = flat(angle.angleIn / 2)
    const quench = { ...seat, xIn: 2, gauge: { ...seat.gauge, depthIn: 0.01 } }
    expect(must(topCutLoss(angle, quench)).lostShare).toBeLessThan(must(topCutLoss(sameVolume, quench)).lostShare)
  })
})

describe('insert and sealing line', () => {
  it.each([
    [0.06, 0, 15],
    [0.02, 1, 15],
    [0.03, 1, -12],
  ])('flat %s, %s°, valve %s°: as walked round [derived]', (flatIn, angleDeg, valveAngleDeg) => {
    const given = { ...seat, valveAngleDeg }
    const cut = angled(flatIn, angleDeg)
    const marks = must(insertMarks(cut, given))
    const insert = heights(cut, given, 'insert')
    expect(marks.share).toBeCloseTo(shareUnder(insert), 3)
    expect(marks.cutterMeetsInsert).toBe(shareUnder(insert) > 0)
    const lowest = insert.reduce((least, one) => (one.height < least.height ? one : least))
    expect(marks.where).toBe(lowest.x < 3 ? 'shallow' : 'deep')
    const least = Math.min(...heights(cut, given, 'sealing').map(({ height }) => height))
    const margin = must(sealingMargin(cut, given))
    expect(margin.marginIn).toBeCloseTo(least, 7)
    expect(margin.hold).toBe(least <= 0)
  })

  it('a flat cut takes its own depth off the sealing margin; at none left the head is held', () => {
    const gauged = { ...seat, gauge: { depthIn: 0.1, circle: 'sealing' as const } }
    expect(must(sealingMargin(flat(0.03), gauged)).marginIn).toBeCloseTo(0.07, 12)
    expect(must(sealingMargin(flat(0.03), gauged)).hold).toBe(false)
    expect(must(sealingMargin(flat(0.11), gauged)).hold).toBe(true)
  })

  it('no mark, no place', () => {
    const deepSeat = { ...seat, gauge: { depthIn: 0.3, circle: 'insert' as const } }
    expect(must(insertMarks(flat(0.02), deepSeat))).toEqual({
      cutterMeetsInsert: false,
      share: 0,
      where: null,
    })
  })
})

describe('what is missing, what cannot be', () => {
  it('names it', () => {
    const bare: Seat = {
      ...seat,
      circles: { ...seat.circles, 'top-cut': { diameterIn: null, offsetIn: null } },
      gauge: { depthIn: null, circle: 'sealing' },
      valveAngleDeg: null,
      xIn: null,
    }
    expect(topCutLoss(flat(0.02), bare)).toMatchObject({
      refusal: { code: 'missing', needs: ['valveAngleDeg', 'depthIn', 'diameterIn', 'offsetIn'] },
    })
    expect(topCutLoss(angled(0, 1), { ...seat, xIn: null })).toMatchObject({ refusal: { needs: ['xIn'] } })
    expect(topCutLoss(flat(0.02), { ...seat, xIn: null }).ok).toBe(true)
    expect(sealingMargin(flat(0.02), { ...seat, valveAngleDeg: 70 })).toMatchObject({
      refusal: { code: 'out-of-range' },
    })
  })

  it('shares lie within 0–1 and grow with the cut; margins shrink; nothing is NaN', () => {
    const angle = fc.double({ min: -45, max: 45, noNaN: true })
    const depth = fc.double({ min: 0, max: 0.4, noNaN: true })
    fc.assert(
      fc.property(angle, depth, depth, fc.double({ min: 0, max: 2, noNaN: true }), (valveAngleDeg, a, b, angleDeg) => {
        const given = { ...seat, valveAngleDeg }
        const [less, more] = [angled(Math.min(a, b), angleDeg), angled(Math.max(a, b), angleDeg)]
        const [small, large] = [must(topCutLoss(less, given)).lostShare, must(topCutLoss(more, given)).lostShare]
        expect(small).toBeGreaterThanOrEqual(0)
        expect(large).toBeGreaterThanOrEqual(small)
        expect(large).toBeLessThanOrEqual(1)
        expect(must(sealingMargin(more, given)).marginIn).toBeLessThanOrEqual(must(sealingMargin(less, given)).marginIn)
      }),
    )
    const any = fc.double()
    fc.assert(
      fc.property(any, any, any, any, (flatIn, angleIn, depthIn, valveAngleDeg) => {
        const given = { ...seat, valveAngleDeg, gauge: { ...seat.gauge, depthIn } }
        const margin = sealingMargin({ flatIn, angleIn, milledWidthIn: width }, given)
        if (margin.ok) expect(Number.isFinite(margin.value.marginIn)).toBe(true)
      }),
    )
  })

  it('a canted valve swings by its full angle: 12° across and 5° along', () => {
    // tan² 12° + tan² 5° = 0.045181 + 0.007654 = 0.052835; full angle atan √0.052835, its sine √(0.052835/1.052835) = 0.224018
    const canted = {
      ...seat,
      valveAngleDeg: 12,
      cantDeg: 5,
      gauge: { depthIn: 0.1, circle: 'sealing' as const },
    }
    const swing = 1.0 * 0.224018
    expect(must(sealingMargin(flat(0.03), canted)).marginIn).toBeCloseTo(0.07, 9)
    const half = must(topCutLoss(flat(0.1 + swing - 0.05 * Math.cos(Math.asin(0.224018))), canted))
    expect(half.lostShare).toBeCloseTo(0.5, 4)
  })
})
