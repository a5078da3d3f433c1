import fc from 'fast-check'
import { linearRegression } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { must } from '../../../lib/core/errors'
import { cutsLikeDepth, learnRate, type RateCut } from '../../../lib/core/rate/learn'
import { priorRate, rateForHead, thouPerCc, type Rate } from '../../../lib/core/rate/rate'
import { seeded } from './random'

const cut = (depthThou: number, tookCc: number, uCc = 0.1, likeForLike = true): RateCut => ({
  depthThou,
  beforeCc: 80,
  uBeforeCc: uCc,
  afterCc: 80 - tookCc,
  uAfterCc: uCc,
  likeForLike,
})
const outline: Rate = { ccPerThou: 1 / 6, uCcPerThou: 0.05 / 6, cuts: 0, prior: 'outline' }

describe('a rate before any cut', () => {
  it('an opening of 10.1706 in² takes six thou per cc (common practice: about 0.006 in per cc)', () => {
    const rate = must(priorRate({ kind: 'outline', openingAreaIn2: 10.1706 }))
    expect(thouPerCc(rate).thouPerCc).toBeCloseTo(6, 4)
    expect(thouPerCc(rate).uThouPerCc).toBeCloseTo(0.3, 4) // 5 % of six
    expect(3 / rate.ccPerThou).toBeCloseTo(18, 3) // 3 cc ⇔ 18 thou flat
  })

  it('the perimeter rule of Eaton Balancing (Jan 2013): 1/((perimeter/π)²·12.87) in per cc', () => {
    // Hand-worked: 11.3/π = 3.596902; squared 12.93770; ×12.87 = 166.508 cc per in.
    const rate = must(priorRate({ kind: 'perimeter', perimeterIn: 11.3 }))
    expect(rate.ccPerThou).toBeCloseTo(0.166508, 5)
    expect(rate.uCcPerThou / rate.ccPerThou).toBeCloseTo(0.15, 12)
  })

  it('treats a round outline as what it is: 3.600 in across, the same as its area gives', () => {
    const perimeter = must(priorRate({ kind: 'perimeter', perimeterIn: Math.PI * 3.6 }))
    const area = must(priorRate({ kind: 'outline', openingAreaIn2: (Math.PI / 4) * 3.6 ** 2 }))
    expect(perimeter.ccPerThou / area.ccPerThou).toBeCloseTo(1, 3)
  })

  it('with neither it goes by six thou per cc, or by the figure the shop has, within a quarter', () => {
    expect(must(priorRate({ kind: 'none' }))).toEqual({
      ccPerThou: 1 / 6,
      uCcPerThou: 1 / 24,
      cuts: 0,
      prior: 'none',
      firstGuessCcPerThou: 1 / 6,
    })
    expect(must(priorRate({ kind: 'none', thouPerCc: 5 })).ccPerThou).toBeCloseTo(0.2, 12)
  })

  it('says what it needs, and what cannot be', () => {
    const unknown = priorRate({ kind: 'outline', openingAreaIn2: null })
    expect(unknown).toMatchObject({ ok: false, refusal: { code: 'missing', needs: ['openingAreaIn2'] } })
    for (const openingAreaIn2 of [0, 0.49, 40.1, NaN, Infinity]) {
      expect(priorRate({ kind: 'outline', openingAreaIn2 })).toMatchObject({
        refusal: { code: 'out-of-range' },
      })
    }
    expect(priorRate({ kind: 'perimeter', perimeterIn: null })).toMatchObject({
      refusal: { code: 'missing' },
    })
  })

  it('a head not yet cut is known less well than its casting: both spreads, by Pythagoras', () => {
    // 4 and 3 make 5: 0.004 posterior and 3 % of 0.1 between heads.
    const head = rateForHead({ ccPerThou: 0.1, uCcPerThou: 0.004, cuts: 9, prior: 'outline' })
    expect(head.uCcPerThou).toBeCloseTo(0.005, 12)
    expect(head.cuts).toBe(9)
    expect(rateForHead(outline, 0)).toEqual(outline)
  })
})

describe('what cuts teach', () => {
  it('one cut, worked by hand', () => {
    // 1/6 ± 0.0083333; ten thou took 1.6 cc, each cc ±0.1, depth ±0.5 thou:
    // u² = 0.01 + 0.01 + (0.166667·0.5)² = 0.0269444; P = 6.94444e-5; P·d² = 0.00694444
    // gain = 6.94444e-4/0.0338889 = 0.0204918; k = 0.166667 + 0.0204918·(1.6 − 1.666667) = 0.1653005
    // P' = 6.94444e-5·0.0269444/0.0338889 = 5.52140e-5, root 0.00743061
    const rate = must(learnRate(outline, [cut(10, 1.6)], 0.5))
    expect(rate.ccPerThou).toBeCloseTo(0.1653005, 6)
    expect(rate.uCcPerThou).toBeCloseTo(0.00743061, 7)
    expect(rate.cuts).toBe(1)
  })

  it('is the textbook conjugate normal posterior: precisions add, means weighted by them', () => {
    // k₀ = 1/6 in the noise of every cut; between heads 3 % of it, 0.005.
    const cuts = [cut(8, 1.4, 0.12), cut(20, 3.1, 0.2)]
    const weights = cuts.map(({ uBeforeCc, uAfterCc, depthThou }) => {
      const variance = (uBeforeCc ** 2 + uAfterCc ** 2 + (0.5 / 6) ** 2) / depthThou ** 2 + 0.005 ** 2
      return 1 / variance
    })
    const guess = 1 / outline.uCcPerThou ** 2
    const sum = weights.reduce((all, weight) => all + weight, guess)
    const seen = cuts.map((one) => (one.beforeCc - one.afterCc) / one.depthThou)
    const mean = seen.reduce((all, one, at) => all + one * (weights[at] ?? 0), outline.ccPerThou * guess) / sum
    const rate = must(learnRate(outline, cuts, 0.5, 0.03))
    expect(rate.ccPerThou).toBeCloseTo(mean, 12)
    expect(rate.uCcPerThou).toBeCloseTo(1 / Math.sqrt(sum), 12)
    const other = must(learnRate(outline, cuts.toReversed(), 0.5, 0.03))
    expect(other.ccPerThou).toBeCloseTo(mean, 12)
    expect(other.uCcPerThou).toBeCloseTo(rate.uCcPerThou, 12)
  })

  it('with many cuts comes to least squares through the origin (simple-statistics, each point mirrored)', () => {
    const draw = seeded(3)
    const cuts = Array.from({ length: 4000 }, () => {
      const depthThou = 5 + 25 * draw.uniform()
      return cut(depthThou, 0.21 * depthThou + draw.normal(0, 0.15))
    })
    const points = cuts.map((one) => [one.depthThou, one.beforeCc - one.afterCc])
    // A package that only fits with an intercept finds none when every point has its mirror image.
    const line = linearRegression([...points, ...points.map((point) => point.map((value) => -value))])
    expect(line.b).toBeCloseTo(0, 9)
    const rate = must(learnRate(outline, cuts, 0))
    expect(rate.ccPerThou).toBeCloseTo(line.m, 4)
    // What the guess still weighs against 4000 cuts is known exactly: its precision against theirs.
    const [guess, data] = [1 / outline.uCcPerThou ** 2, cuts.reduce((sum, one) => sum + one.depthThou ** 2 / 0.02, 0)]
    expect(rate.ccPerThou).toBeCloseTo((outline.ccPerThou * guess + line.m * data) / (guess + data), 9)
    expect(rate.cuts).toBe(4000)
  })

  it('passes over what is not like for like, and does not count it', () => {
    const rate = must(learnRate(outline, [cut(10, 9, 0.1, false), cut(10, 1.6), cut(10, 0.1, 0.1, false)]))
    expect(rate).toEqual(must(learnRate(outline, [cut(10, 1.6)])))
  })

  it('no cuts, nothing learned; nothing uncertain, nothing learned; a perfect cut is believed, but never to nought', () => {
    expect(must(learnRate(outline, []))).toEqual(outline)
    const sure = { ...outline, uCcPerThou: 0 }
    expect(must(learnRate(sure, [cut(10, 1.2, 0)], 0)).ccPerThou).toBe(sure.ccPerThou)
    const perfect = must(learnRate(outline, [cut(10, 2, 0)], 0))
    expect(perfect.ccPerThou).toBeCloseTo(0.2, 12)
    expect(perfect.uCcPerThou).toBeCloseTo(1 / 6000, 12) // 0.1 % of 1/6
  })

  it('refuses what cannot be', () => {
    expect(learnRate(outline, [cut(0, 1)])).toMatchObject({ refusal: { code: 'out-of-range' } })
    expect(learnRate(outline, [cut(NaN, 1)])).toMatchObject({ refusal: { code: 'out-of-range' } })
    expect(learnRate(outline, [cut(10, 1.6)], -1)).toMatchObject({ refusal: { code: 'out-of-range' } })
    expect(learnRate({ ...outline, uCcPerThou: 1 }, [cut(10, -5, 0.01)])).toMatchObject({
      refusal: { code: 'contradiction' },
    })
  })

  it('is always better known after a cut, and lies between what was believed and what was seen', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 0.05, max: 0.6, noNaN: true }),
        fc.double({ min: 0.02, max: 1, noNaN: true }),
        (depthThou, seenK, uCc) => {
          const rate = must(learnRate(outline, [cut(depthThou, seenK * depthThou, uCc)]))
          expect(rate.uCcPerThou).toBeLessThan(outline.uCcPerThou)
          expect(rate.ccPerThou).toBeGreaterThanOrEqual(Math.min(seenK, outline.ccPerThou) - 1e-9)
          expect(rate.ccPerThou).toBeLessThanOrEqual(Math.max(seenK, outline.ccPerThou) + 1e-9)
        },
      ),
    )
  })

  it('a long cut does not teach a short one while there are short ones', () => {
    const cuts = [cut(10, 1.6), cut(60, 9), cut(19, 3), cut(4, 0.6)]
    expect(cutsLikeDepth(cuts, 10).map((one) => one.depthThou)).toEqual([10, 19])
    expect(cutsLikeDepth(cuts, 300)).toEqual(cuts)
  })
})
