import fc from 'fast-check'
import { lusolve, matrix, multiply, transpose } from 'mathjs'
import { describe, expect, it } from 'vitest'
import { must } from '../../../lib/core/errors'
import { cornerPoint, type CornerName } from '../../../lib/core/straightness/corner-point'
import { leastSquaresPlane } from '../../../lib/core/straightness/least-squares-plane'
import { planeFit, type PlaneFitInput } from '../../../lib/core/straightness/plane-fit'
import { judgeStraightness } from '../../../lib/core/straightness/straightness'
import { seeded } from '../rate/random'

const size = { milledWidthIn: 7, deckLengthIn: 20 }
const deck = { ...size, deepEdge: 'exhaust' as const }
const corners: readonly CornerName[] = ['intake-1', 'exhaust-1', 'intake-2', 'exhaust-2']

/**
 * A head of any thickness at its corners, cut flat f and w at the exhaust edge, taper t; the reading after is the
 * distance from the point on top to the new deck, which is a plane in space, or the height over it along the old normal.
 */
function gauged(
  cut: { f: number; w: number; taper: number },
  squareTo: PlaneFitInput['gaugedSquareTo'],
  before = [4.5, 4.5, 4.5, 4.5],
): PlaneFitInput {
  const normal = [-cut.w / size.milledWidthIn, -cut.taper / size.deckLengthIn, 1]
  const length = squareTo === 'new-deck' ? Math.hypot(...normal) : 1
  const points = corners.map((name, i) => {
    const { xIn, yIn } = cornerPoint(name, deck, { edgeIn: 0.25, endIn: 0.25 })
    const beforeIn = before[i] ?? NaN
    const depth = cut.f + (cut.w * xIn) / size.milledWidthIn + cut.taper * (yIn / size.deckLengthIn - 0.5)
    return { name, xIn, yIn, beforeIn, afterIn: (beforeIn - depth) / length }
  })
  return { ...size, points, gaugedSquareTo: squareTo }
}

describe('what a cut did', () => {
  const cut = { f: 0.02, w: 7 * Math.tan(Math.PI / 180), taper: 0.003 }

  it.each(['old-deck', 'new-deck'] as const)('gauged square to the %s: flat, angle and taper come back', (squareTo) => {
    const fit = must(planeFit(gauged(cut, squareTo, [4.5, 4.61, 4.48, 4.6])))
    expect(fit.flatIn).toBeCloseTo(0.02, 8)
    expect(fit.angleIn).toBeCloseTo(cut.w, 8)
    expect(fit.angleDeg).toBeCloseTo(1, 6)
    expect(fit.taperIn).toBeCloseTo(0.003, 8)
    expect(fit.residual?.rmsIn).toBeCloseTo(0, 8)
  })

  it('read as if square to the old deck, the flat part comes out 0.7 thou too deep at 1° and 4.5 in', () => {
    const input = gauged({ ...cut, taper: 0 }, 'new-deck')
    const wrong = must(planeFit({ ...input, gaugedSquareTo: 'old-deck' }))
    const right = must(planeFit(input))
    expect(wrong.flatIn - right.flatIn).toBeCloseTo(0.0007, 4)
  })

  it('the example worked by hand: corners 7 in apart, 0.020 off one edge and 0.083 off the other', () => {
    const points = corners.map((name) => ({
      name,
      ...cornerPoint(name, deck),
      beforeIn: 4.5,
      afterIn: name.startsWith('intake') ? 4.48 : 4.417,
    }))
    const fit = must(planeFit({ ...size, points, gaugedSquareTo: 'old-deck' }))
    expect(fit.flatIn).toBeCloseTo(0.02, 9)
    expect(fit.angleIn).toBeCloseTo(0.063, 9)
    expect(fit.taperIn).toBeCloseTo(0, 9)
  })

  it('least squares of scattered readings, against the normal equations solved by mathjs', () => {
    const draw = seeded(5)
    const points = Array.from({ length: 11 }, () => {
      const [x, y] = [7 * draw.uniform(), 20 * draw.uniform()]
      return [x, y, 0.02 + 0.009 * x + 0.0002 * y + draw.normal(0, 0.0005)] as const
    })
    const rows = matrix(points.map(([x, y]) => [1, x, y]))
    const right = matrix(points.map(([, , z]) => [z]))
    const solved = lusolve(multiply(transpose(rows), rows), multiply(transpose(rows), right))
    const [[at0 = NaN], [perX = NaN], [perY = NaN]] = solved.valueOf() as [number[], number[], number[]]
    const plane = leastSquaresPlane(points)
    expect(plane?.at0).toBeCloseTo(at0, 10)
    expect(plane?.perX).toBeCloseTo(perX, 10)
    expect(plane?.perY).toBeCloseTo(perY, 10)
  })

  it('four corners, one of them off: each shows a quarter of it, by symmetry', () => {
    // A corner 0.004 off its plane: the twist (+, −, −, +)·0.001 is what no plane can follow.
    const input = gauged({ ...cut, taper: 0 }, 'old-deck')
    const points = input.points.map((point, i) =>
      i === 3 ? { ...point, afterIn: (point.afterIn ?? NaN) - 0.004 } : point,
    )
    const fit = must(planeFit({ ...input, points }))
    expect(fit.residual?.rmsIn).toBeCloseTo(0.001, 9)
    expect(Math.abs(fit.residual?.worstIn ?? NaN)).toBeCloseTo(0.001, 9)
  })

  it('names the worst point', () => {
    const input = gauged(cut, 'old-deck')
    const middle = {
      name: 'middle',
      xIn: 3.5,
      yIn: 10,
      beforeIn: 4.5,
      afterIn: 4.5 - 0.02 - cut.w / 2 - 0.005,
    }
    const fit = must(planeFit({ ...input, points: [...input.points, middle] }))
    expect(fit.residual?.worstPoint).toBe('middle')
    expect(fit.residual?.worstIn).toBeCloseTo(0.004, 9) // 0.005 less its fifth, by symmetry of the rest
  })

  it('with three points there is nothing to judge', () => {
    const input = gauged(cut, 'old-deck')
    const fit = must(planeFit({ ...input, points: input.points.slice(0, 3) }))
    expect(fit.residual).toBeNull()
    expect(fit.angleIn).toBeCloseTo(cut.w, 9)
  })

  it('refuses points on one line, too few, and what cannot be', () => {
    const input = gauged(cut, 'old-deck')
    const line = input.points.slice(0, 3).map((point, i) => ({ ...point, xIn: 1 + i, yIn: 2 + 3 * i }))
    expect(planeFit({ ...input, points: line })).toMatchObject({
      refusal: { code: 'missing', needs: ['points'] },
    })
    const nearly = (offIn: number) => line.map((point, i) => (i === 2 ? { ...point, yIn: 8 + offIn } : point))
    // A ten-thousandth of an inch off the line of 6.3 in: no gauge is placed that well, and the plane would swing.
    expect(planeFit({ ...input, points: nearly(0.0001) })).toMatchObject({ refusal: { code: 'missing' } })
    expect(planeFit({ ...input, points: nearly(0.1) }).ok).toBe(true)
    const halfRead = input.points.map((point, i) => (i > 1 ? { ...point, afterIn: null } : point))
    expect(planeFit({ ...input, points: halfRead })).toMatchObject({
      refusal: { code: 'missing', needs: ['points'] },
    })
    expect(planeFit({ ...input, deckLengthIn: null })).toMatchObject({ refusal: { needs: ['deckLengthIn'] } })
    const absurd = input.points.map((point) => ({ ...point, afterIn: 0.1 }))
    expect(planeFit({ ...input, points: absurd })).toMatchObject({ refusal: { code: 'out-of-range' } })
    const same = input.points.map((point) => ({ ...point, xIn: 1, yIn: 1 }))
    expect(planeFit({ ...input, points: same }).ok).toBe(false)
  })

  it('nothing cut, nothing found; any readings give figures or a refusal, never NaN', () => {
    const fit = must(planeFit(gauged({ f: 0, w: 0, taper: 0 }, 'new-deck')))
    expect([fit.flatIn, fit.angleIn, fit.taperIn]).toEqual([0, 0, 0])
    const any = fc.oneof(fc.double(), fc.double({ min: 0.3, max: 12, noNaN: true }))
    fc.assert(
      fc.property(fc.array(fc.tuple(any, any, any, any), { minLength: 3, maxLength: 6 }), fc.boolean(), (rows, old) => {
        const points = rows.map(([xIn, yIn, beforeIn, afterIn], i) => ({
          name: `${i}`,
          xIn,
          yIn,
          beforeIn,
          afterIn,
        }))
        const found = planeFit({ ...size, points, gaugedSquareTo: old ? 'old-deck' : 'new-deck' })
        if (!found.ok) return
        const { flatIn, angleIn, angleDeg, taperIn, residual } = found.value
        expect([flatIn, angleIn, angleDeg, taperIn, residual?.rmsIn ?? 0].every(Number.isFinite)).toBe(true)
      }),
    )
  })

  it('mirrored, deep at the other edge, the angle part changes its sign', () => {
    const input = gauged({ ...cut, taper: 0 }, 'new-deck')
    const points = input.points.map((point) => ({ ...point, xIn: size.milledWidthIn - point.xIn }))
    const fit = must(planeFit({ ...input, points }))
    expect(fit.angleIn).toBeCloseTo(-cut.w, 8)
    expect(fit.flatIn).toBeCloseTo(cut.f + cut.w, 8)
  })
})

describe('corners', () => {
  it('lie by the deep edge and the end, inside by the inset', () => {
    expect(cornerPoint('exhaust-2', deck, { edgeIn: 0.5, endIn: 0.5 })).toEqual({ xIn: 6.5, yIn: 19.5 })
    expect(cornerPoint('intake-1', deck, { edgeIn: 0.5, endIn: 0.5 })).toEqual({ xIn: 0.5, yIn: 0.5 })
    expect(cornerPoint('intake-1', { ...deck, deepEdge: 'intake' })).toEqual({ xIn: 7, yIn: 0 })
  })
})

describe('straightness', () => {
  it('0.002 across and 0.001 per cylinder along (AllHead; sums differ by maker)', () => {
    expect(must(judgeStraightness(0.002, 0.004, 4))).toMatchObject({ acrossWithin: true, alongWithin: true })
    expect(must(judgeStraightness(0.0025, 0.0045, 4))).toMatchObject({
      acrossWithin: false,
      alongWithin: false,
    })
    expect(must(judgeStraightness(0, 0.003, 3)).alongLimitIn).toBeCloseTo(0.003, 12)
  })

  it('the shop may ask for more', () => {
    const limits = { acrossIn: 0.001, alongPerCylinderIn: 0.0005 }
    expect(must(judgeStraightness(0.0015, 0.002, 4, limits))).toMatchObject({
      acrossWithin: false,
      alongWithin: true,
    })
  })

  it('needs its readings', () => {
    expect(judgeStraightness(null, 0.001, 4)).toMatchObject({
      refusal: { code: 'missing', needs: ['acrossIn'] },
    })
    expect(judgeStraightness(0.001, -0.001, 4)).toMatchObject({ refusal: { code: 'out-of-range' } })
  })
})
