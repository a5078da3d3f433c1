import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { must } from '../../../lib/core/errors'
import { pistonToValve, valveAngleAfter } from '../../../lib/core/clearance/piston-to-valve'
import { circlePoints, newDeck, rad, type V3 } from './vectors'

const width = 7
const flat = (flatIn: number) => ({ flatIn, angleIn: 0, milledWidthIn: null })
const angled = (flatIn: number, angleDeg: number) => ({
  flatIn,
  angleIn: width * Math.tan(rad(angleDeg)),
  milledWidthIn: width,
})
const valve = { xIn: 3.2, zIn: 0.45, diameterIn: 2.02, valveAngleDeg: 23 }
const unknown = { xIn: null, zIn: null, diameterIn: null, valveAngleDeg: null }

/** Lowest point of the open valve's rim over the old and over the new deck, by going round it; cant seen from the side. */
function rimLoss(cut: ReturnType<typeof angled>, given: typeof valve, cantDeg: number, liftIn: number) {
  const deck = newDeck(cut.flatIn, cut.angleIn, width)
  const raw: V3 = [Math.tan(rad(given.valveAngleDeg)), Math.tan(rad(cantDeg)), -1]
  const size = Math.hypot(...raw)
  const lift = liftIn / size
  const centre: V3 = [given.xIn + lift * raw[0], lift * raw[1], given.zIn + lift * raw[2]]
  const rim = circlePoints(centre, raw, given.diameterIn / 2)
  return Math.min(...rim.map(([, , z]) => z)) - Math.min(...rim.map(([x, , z]) => deck.height([x, z])))
}

describe('piston-to-valve loss', () => {
  it('a flat cut takes its own depth (common practice), whatever else is known', () => {
    expect(must(pistonToValve({ cut: flat(0.03), valve: unknown, liftIn: null })).lossIn).toBe(0.03)
    expect(must(pistonToValve({ cut: flat(0.03), valve, liftIn: 0.5 })).lossIn).toBe(0.03)
  })

  it('an angle cut, against the rim walked round in space [derived]', () => {
    for (const [angleDeg, valveAngleDeg, cantDeg, liftIn, xIn] of [
      [1, 23, 0, 0.45, 3.2],
      [1, -23, 0, 0.45, 3.2],
      [0.5, 15, 4, 0.6, 1.5],
      [2, 0.7, 0, 0.2, 5.5],
      [1.5, 0, -6, 0, 2.5],
    ] as const) {
      const given = { ...valve, valveAngleDeg, xIn }
      const cut = angled(0.012, angleDeg)
      const loss = must(pistonToValve({ cut, valve: { ...given, cantDeg }, liftIn }))
      expect(loss.lossIn).toBeCloseTo(rimLoss(cut, given, cantDeg, liftIn), 6)
    }
  })

  it('sinking gives back q·cos θ′: 0.010 at 23° gives 0.0092, at 22° after a degree 0.00927', () => {
    const sunk = must(pistonToValve({ cut: flat(0.03), valve, liftIn: 0.5, sinkIn: 0.01 }))
    expect(sunk.sinkBackIn).toBeCloseTo(0.009205, 6) // cos 23° = 0.920505
    expect(sunk.lossIn).toBeCloseTo(0.020795, 6)
    const turned = must(pistonToValve({ cut: angled(0, 1), valve, liftIn: 0.5, sinkIn: 0.01 }))
    expect(turned.sinkBackIn).toBeCloseTo(0.009272, 6) // cos 22° = 0.927184
    expect(turned.deckLossIn - turned.lossIn).toBeCloseTo(turned.sinkBackIn, 12)
  })

  it('along the axis and square to it: 0.030 at 23° is 0.0276 and 0.0117', () => {
    for (const valveAngleDeg of [23, -23]) {
      const moved = must(pistonToValve({ cut: flat(0.03), valve: { ...unknown, valveAngleDeg }, liftIn: null }))
      expect(moved.alongAxisIn).toBeCloseTo(0.0276, 4)
      expect(moved.sidewaysIn).toBeCloseTo(0.0117, 4)
      expect(moved.angleChangeDeg).toBe(0)
    }
  })

  it('for a pocketed piston after an angle cut, by vectors; without the dowels the sideways move is not guessed', () => {
    const deck = newDeck(0.01, width * Math.tan(rad(1)), width)
    const [s, c] = [Math.sin(rad(23)), Math.cos(rad(23))]
    const centre = [3.2 + 0.45 * s, 0.45 - 0.45 * c] as const
    const [x, z] = deck.onBlock(centre, 2)
    const move = [x - centre[0], z - centre[1]] as const
    const loss = must(pistonToValve({ cut: angled(0.01, 1), valve, liftIn: 0.45, dowelXIn: 2 }))
    expect(loss.alongAxisIn).toBeCloseTo(move[0] * s - move[1] * c, 10)
    expect(loss.sidewaysIn).toBeCloseTo(Math.abs(move[0] * c + move[1] * s), 10)
    expect(loss.angleChangeDeg).toBeCloseTo(1, 10)
    const noDowels = must(pistonToValve({ cut: angled(0.01, 1), valve, liftIn: 0.45 }))
    expect([noDowels.alongAxisIn, noDowels.sidewaysIn]).toEqual([null, null])
    expect(noDowels.lossIn).toBe(loss.lossIn)
  })

  it('what is left of a measured clearance; none measured, none given', () => {
    const given = { cut: flat(0.03), valve, liftIn: 0.5 }
    expect(must(pistonToValve({ ...given, measuredIn: 0.12 })).remainingIn).toBeCloseTo(0.09, 12)
    expect(must(pistonToValve({ ...given, measuredIn: null })).remainingIn).toBeNull()
  })

  it('names every figure that an angle cut needs and has not', () => {
    expect(pistonToValve({ cut: angled(0, 1), valve: unknown, liftIn: null })).toMatchObject({
      refusal: { code: 'missing', needs: ['xIn', 'zIn', 'diameterIn', 'valveAngleDeg', 'liftIn'] },
    })
    expect(pistonToValve({ cut: flat(0.03), valve: unknown, liftIn: null, sinkIn: 0.01 })).toMatchObject({
      refusal: { code: 'missing', needs: ['valveAngleDeg'] },
    })
  })

  it('refuses what cannot be', () => {
    const good = { cut: angled(0, 1), valve, liftIn: 0.5 }
    for (const bad of [
      { ...good, liftIn: 2.01 },
      { ...good, valve: { ...valve, valveAngleDeg: 61 } },
      { ...good, valve: { ...valve, diameterIn: 0.2 } },
      { ...good, sinkIn: -0.01 },
      { ...good, measuredIn: NaN },
    ]) {
      expect(pistonToValve(bad)).toMatchObject({ refusal: { code: 'out-of-range' } })
    }
  })

  it('grows with the flat part by exactly as much, and never is NaN', () => {
    const any = fc.double()
    const place = fc.double({ min: -8, max: 8, noNaN: true })
    fc.assert(
      fc.property(place, place, fc.double({ min: 0, max: 0.2, noNaN: true }), (xIn, zIn, more) => {
        const at = (flatIn: number) =>
          must(pistonToValve({ cut: angled(flatIn, 1), valve: { ...valve, xIn, zIn }, liftIn: 0.4 })).lossIn
        expect(at(more) - at(0)).toBeCloseTo(more * Math.cos(rad(1)), 10)
      }),
    )
    fc.assert(
      fc.property(any, any, any, any, any, any, (flatIn, angleIn, xIn, zIn, valveAngleDeg, liftIn) => {
        const cut = { flatIn, angleIn, milledWidthIn: width }
        const loss = pistonToValve({ cut, valve: { ...valve, xIn, zIn, valveAngleDeg }, liftIn })
        if (loss.ok) expect(Number.isFinite(loss.value.lossIn)).toBe(true)
      }),
    )
  })
})

describe('valve angle after a cut', () => {
  it('keeps its sign: opening toward the deep edge it falls, toward the shallow edge it grows', () => {
    expect(must(valveAngleAfter(angled(0, 1), 23))).toBeCloseTo(22, 10)
    expect(must(valveAngleAfter(angled(0, 1), -23))).toBeCloseTo(-24, 10)
    expect(must(valveAngleAfter(angled(0.02, 1), 0.5))).toBeCloseTo(-0.5, 10)
    expect(must(valveAngleAfter(flat(0.05), 23))).toBe(23)
    expect(must(pistonToValve({ cut: angled(0, 1), valve, liftIn: 0 })).valveAngleAfterDeg).toBeCloseTo(22, 10)
    expect(must(pistonToValve({ cut: flat(0.1), valve: unknown, liftIn: 0 })).valveAngleAfterDeg).toBeNull()
  })

  it('needs the angle', () => {
    expect(valveAngleAfter(flat(0.05), null)).toMatchObject({
      refusal: { code: 'missing', needs: ['valveAngleDeg'] },
    })
  })
})
