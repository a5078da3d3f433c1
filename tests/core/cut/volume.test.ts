import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { circleOpening } from '../../../lib/core/cut/circle'
import { cutAngleDeg, edgeDepthIn } from '../../../lib/core/cut/angle'
import { depthAt } from '../../../lib/core/cut/depth-at'
import { cutVolumeCc, sinkVolumeCc } from '../../../lib/core/cut/volume'
import { must } from '../../../lib/core/errors'
import { priorRate, thouPerCc } from '../../../lib/core/rate/rate'
import { cutFromRound } from './solid'

const W = 7
const round = { diameterIn: 3.6, centreIn: 3.5 }
const opening = must(circleOpening(round.diameterIn, round.centreIn, W))
const angleCut = (deg: number) => ({
  flatIn: 0,
  angleIn: W * Math.tan((deg * Math.PI) / 180),
  milledWidthIn: W,
})

describe('an angle cut over 7 in from a round opening of 3.600 at the middle [derived]', () => {
  it.each([
    [0.25, 2.547],
    [0.5, 5.095],
    [1, 10.19],
    [2, 20.387],
  ])('%d° takes %d cc, and so it does from the solid', (deg, printed) => {
    const cut = angleCut(deg)
    const taken = must(cutVolumeCc(opening, cut))
    expect(Math.abs(taken - printed)).toBeLessThan(0.001)
    expect(taken / cutFromRound(cut, round)).toBeCloseTo(1, 8)
  })

  it('any cut of any round chamber takes what the solid loses', () => {
    const any = fc.record({
      // None, or what a mill can set: the solid takes a slope of a billionth of an inch for flat.
      flatIn: fc.oneof(fc.constant(0), fc.double({ min: 0.0001, max: 0.2, noNaN: true })),
      angleIn: fc.oneof(fc.constant(0), fc.double({ min: 0.0001, max: 0.3, noNaN: true })),
      milledWidthIn: fc.double({ min: 5, max: 12, noNaN: true }),
      share: fc.double({ min: 0.35, max: 0.65, noNaN: true }),
    })
    fc.assert(
      fc.property(any, ({ share, ...cut }) => {
        fc.pre(cut.flatIn + cut.angleIn > 0.001)
        const place = { diameterIn: 3, centreIn: share * cut.milledWidthIn }
        const of = must(circleOpening(3, place.centreIn, cut.milledWidthIn))
        // Held as mean depth in inches: the solid's corners are good to a few 1e-10 in, however shallow the cut.
        const depthIn = (cc: number) => cc / (16.387064 * of.areaIn2)
        expect(depthIn(must(cutVolumeCc(of, cut)))).toBeCloseTo(depthIn(cutFromRound(cut, place)), 9)
      }),
      { numRuns: 40 },
    )
  })
})

describe('depth and angle', () => {
  it('1° over 7 in is 0.12219 in at the edge [derived]', () => {
    expect(must(edgeDepthIn(1, W))).toBeCloseTo(0.12219, 5)
    expect(must(cutAngleDeg(0.12219, W))).toBeCloseTo(1, 4)
  })

  it('about 0.0175·W·degrees (Circle Track, Dec 2003), 0.017 (Chevy High Performance, Oct 2008)', () => {
    for (const deg of [0.25, 0.5, 1, 2]) {
      for (const width of [5, 7, 9]) {
        const edge = must(edgeDepthIn(deg, width))
        expect(Math.abs(edge / (0.0175 * width * deg) - 1)).toBeLessThan(0.004)
        expect(Math.abs(edge / (0.017 * width * deg) - 1)).toBeLessThan(0.03)
      }
    }
  })

  it('turning a 23° valve to 18° would take 0.612 in over 7 in: refused', () => {
    expect(W * Math.tan((5 * Math.PI) / 180)).toBeCloseTo(0.612, 3)
    expect(edgeDepthIn(5, W)).toMatchObject({ refusal: { code: 'out-of-range' } })
  })

  it('there and back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1.4, noNaN: true }),
        fc.double({ min: 1, max: 20, noNaN: true }),
        (deg, width) => {
          const edge = must(edgeDepthIn(deg, width))
          expect(must(cutAngleDeg(edge, width))).toBeCloseTo(deg, 9)
        },
      ),
    )
  })

  it('0.020 flat and 0.063 at the edge of 7 in: 0.020, 0.060 at 4.445, 0.083', () => {
    const cut = { flatIn: 0.02, angleIn: 0.063, milledWidthIn: W }
    expect(must(depthAt(cut, 0))).toBe(0.02)
    expect(must(depthAt(cut, 4.445))).toBeCloseTo(0.060005, 9)
    expect(must(depthAt(cut, W))).toBeCloseTo(0.083, 12)
    expect(depthAt(cut, 7.1)).toMatchObject({ refusal: { code: 'out-of-range' } })
  })
})

describe('rate', () => {
  // [common practice]: about 0.006 in per cc on small wedge chambers.
  it('10.1706 in² is 6.0 thou per cc, and 3 cc are then 18 thou flat', () => {
    const rate = thouPerCc(must(priorRate({ kind: 'outline', openingAreaIn2: 10.1706 })))
    expect(rate.thouPerCc).toBeCloseTo(6, 4)
    const taken = must(
      cutVolumeCc({ areaIn2: 10.1706, centreIn: 3.5 }, { flatIn: 0.018, angleIn: 0, milledWidthIn: W }),
    )
    expect(taken).toBeCloseTo(3, 4)
  })

  // In per cc = 1/((perimeter/π)²·12.87): Eaton Balancing, Jan 2013. For a circle it is the area itself.
  it('the perimeter rule takes every outline for a circle', () => {
    const circle = thouPerCc(must(priorRate({ kind: 'perimeter', perimeterIn: Math.PI * 3.6 }))).thouPerCc
    expect(circle).toBeCloseTo(1000 / (3.6 ** 2 * 12.87), 9)
    const traced = thouPerCc(must(priorRate({ kind: 'outline', openingAreaIn2: (Math.PI / 4) * 3.6 ** 2 })))
    expect(circle / traced.thouPerCc).toBeCloseTo(1, 4)
    // A square of the same perimeter has less area, so that the rule promises more cc than there are.
    const square = must(priorRate({ kind: 'outline', openingAreaIn2: ((Math.PI * 3.6) / 4) ** 2 }))
    expect(circle).toBeLessThan(thouPerCc(square).thouPerCc)
  })
})

describe('seat work', () => {
  // Worked by hand: π/4·2.05²·0.010 = 0.033006 in³ = 0.5409 cc; π/4·1.60²·0.010 = 0.020106 in³ = 0.3295 cc.
  it('0.010 in adds 0.54 cc at 2.05 and 0.33 cc at 1.60', () => {
    expect(must(sinkVolumeCc(2.05, 0.01))).toBeCloseTo(0.5409, 4)
    expect(must(sinkVolumeCc(1.6, 0.01))).toBeCloseTo(0.3295, 4)
  })

  it('a quarter of an inch is the most a seat is sunk', () => {
    expect(must(sinkVolumeCc(2, 0.25))).toBeCloseTo(12.87, 2) // π/4·2²·0.25·16.387064 = 12.8702
    expect(sinkVolumeCc(2, 0.251)).toMatchObject({ refusal: { code: 'out-of-range' } })
    expect(sinkVolumeCc(2, -0.001)).toMatchObject({ refusal: { code: 'out-of-range' } })
  })
})
