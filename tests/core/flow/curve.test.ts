import { curveMonotoneX, line } from 'd3-shape'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { must } from '@/lib/core/errors'
import { flowAt, meanFlow, monotoneCurve, type FlowCurve } from '@/lib/core/flow/curve'

type Point = { readonly liftIn: number; readonly flowCfm: number }

const run: readonly Point[] = [
  [0.1, 64.1],
  [0.2, 131.8],
  [0.3, 190.2],
  [0.4, 233.7],
  [0.5, 251.0],
  [0.6, 249.2],
  [0.65, 250.3],
].map(([liftIn = 0, flowCfm = 0]) => ({ liftIn, flowCfm }))

/** The cubic Bézier pieces of d3-shape's path: the independent drawing of the same curve. */
function d3Pieces(points: readonly Point[]): number[][] {
  const draw = line<Point>()
    .x((p) => p.liftIn)
    .y((p) => p.flowCfm)
    .curve(curveMonotoneX)
    .digits(null)
  const numbers = (text: string) => (text.match(/-?[\d.]+(?:e[-+]?\d+)?/g) ?? []).map(Number)
  const [start = '', ...pieces] = (draw([...points]) ?? '').split('C')
  let from = numbers(start)
  return pieces.map((piece) => {
    const all = [...from, ...numbers(piece)]
    from = all.slice(-2)
    return all
  })
}

/** Handles at thirds of the piece make x run evenly, so the Bézier is the function of x we want. */
function bezierY(piece: readonly number[], t: number): number {
  const [, y0 = NaN, , y1 = NaN, , y2 = NaN, , y3 = NaN] = piece
  const u = 1 - t
  return u ** 3 * y0 + 3 * u * u * t * y1 + 3 * u * t * t * y2 + t ** 3 * y3
}

const arbitraryRun = fc
  .uniqueArray(
    fc.record({
      liftIn: fc.integer({ min: 0, max: 80 }).map((n) => n / 40),
      flowCfm: fc.double({ min: 0, max: 500, noNaN: true }),
    }),
    { minLength: 2, maxLength: 40, selector: (p) => p.liftIn },
  )
  .map((points) => points.sort((a, b) => a.liftIn - b.liftIn))

const at = (curve: FlowCurve, liftIn: number) => must(flowAt(curve, liftIn))

describe('flow curve', () => {
  it('is the one d3-shape draws', () => {
    const check = (points: readonly Point[]) => {
      const curve = must(monotoneCurve(points))
      const pieces = d3Pieces(points)
      if (points.length > 2) expect(pieces).toHaveLength(points.length - 1)
      for (const piece of pieces) {
        const [x0 = NaN, , , , , , x3 = NaN] = piece
        for (const t of [0.1, 0.35, 0.5, 0.8]) {
          expect(at(curve, x0 + (x3 - x0) * t)).toBeCloseTo(bezierY(piece, t), 6)
        }
      }
    }
    check(run)
    fc.assert(fc.property(arbitraryRun, check))
  })

  it('takes the slopes 625, 550, 475 through (0, 0), (0.1, 60), (0.2, 110)', () => {
    // By hand: chords 600 and 500, parabola (600 + 500)/2 = 550, twice its half; ends (3·600 − 550)/2, (3·500 − 550)/2.
    const curve = must(
      monotoneCurve([
        { liftIn: 0, flowCfm: 0 },
        { liftIn: 0.1, flowCfm: 60 },
        { liftIn: 0.2, flowCfm: 110 },
      ]),
    )
    expect(curve.map((knot) => Math.round(knot.slope * 1e6) / 1e6)).toEqual([625, 550, 475])
  })

  it('passes through every reading and overshoots none', () => {
    fc.assert(
      fc.property(arbitraryRun, fc.double({ min: 0, max: 1, noNaN: true }), (points, share) => {
        const curve = must(monotoneCurve(points))
        points.slice(1).forEach((b, i) => {
          const a = points[i] ?? b
          expect(at(curve, b.liftIn)).toBeCloseTo(b.flowCfm, 9)
          const between = at(curve, a.liftIn + (b.liftIn - a.liftIn) * share)
          expect(between).toBeGreaterThanOrEqual(Math.min(a.flowCfm, b.flowCfm) - 1e-9)
          expect(between).toBeLessThanOrEqual(Math.max(a.flowCfm, b.flowCfm) + 1e-9)
        })
      }),
    )
  })

  it('takes a lift that was worked out for the end it is', () => {
    const curve = must(
      monotoneCurve([
        { liftIn: 0.475, flowCfm: 150 },
        { liftIn: 1.675, flowCfm: 240 },
      ]),
    )
    // In binary this is 1.6750000000000003.
    expect(at(curve, 0.475 + (1.675 - 0.475) * 1)).toBe(240)
    expect(flowAt(curve, 1.675001).ok).toBe(false)
  })

  it('does not care in which order the lifts were typed', () => {
    expect(monotoneCurve([...run].reverse())).toEqual(monotoneCurve(run))
  })

  it('does not reach beyond the lifts that were run', () => {
    const curve = must(monotoneCurve(run))
    expect(flowAt(curve, 0.099).ok).toBe(false)
    expect(flowAt(curve, 0.651).ok).toBe(false)
    expect(at(curve, 0.1)).toBe(64.1)
    expect(at(curve, 0.65)).toBe(250.3)
  })

  it.each([
    ['nothing', [], 'missing'],
    ['one lift', run.slice(0, 1), 'missing'],
    ['a lift twice', [...run, { liftIn: 0.3, flowCfm: 191 }], 'contradiction'],
    ['a lift of three inches', [...run, { liftIn: 3, flowCfm: 251 }], 'out-of-range'],
    ['a flow that is no number', [...run, { liftIn: 0.7, flowCfm: NaN }], 'out-of-range'],
  ])('refuses %s', (_, points, code) => {
    const curve = monotoneCurve(points)
    expect(curve.ok ? '' : curve.refusal.code).toBe(code)
  })
})

describe('mean flow', () => {
  it('of a straight line is its middle', () => {
    const curve = must(
      monotoneCurve([
        { liftIn: 0.1, flowCfm: 60 },
        { liftIn: 0.3, flowCfm: 180 },
      ]),
    )
    expect(must(meanFlow(curve, 0.1, 0.3))).toBeCloseTo(120, 9)
    expect(must(meanFlow(curve, 0.15, 0.2))).toBeCloseTo(105, 9)
  })

  it('is the area under the curve d3-shape draws, counted in thin strips', () => {
    const strips = 2000
    let area = 0
    for (const piece of d3Pieces(run)) {
      const [x0 = NaN, , , , , , x3 = NaN] = piece
      for (let i = 0; i < strips; i++) area += (bezierY(piece, (i + 0.5) / strips) * (x3 - x0)) / strips
    }
    expect(must(meanFlow(must(monotoneCurve(run)), 0.1, 0.65))).toBeCloseTo(area / 0.55, 4)
  })

  it('of two parts adds up to the whole', () => {
    const curve = must(monotoneCurve(run))
    fc.assert(
      fc.property(fc.double({ min: 0.11, max: 0.64, noNaN: true }), (cut) => {
        const left = must(meanFlow(curve, 0.1, cut)) * (cut - 0.1)
        const right = must(meanFlow(curve, cut, 0.65)) * (0.65 - cut)
        expect((left + right) / 0.55).toBeCloseTo(must(meanFlow(curve, 0.1, 0.65)), 7)
      }),
    )
  })

  it.each([
    ['an empty range', 0.3, 0.3],
    ['a range the wrong way round', 0.4, 0.3],
    ['a range that starts too low', 0.05, 0.3],
    ['a range that ends too high', 0.3, 0.7],
    ['no number', NaN, 0.3],
  ])('refuses %s', (_, from, to) => {
    const mean = meanFlow(must(monotoneCurve(run)), from, to)
    expect(mean.ok ? '' : mean.refusal.code).toBe('out-of-range')
  })
})
