import { linearRegression } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { must } from '../../../lib/core/errors'
import { learnRate, type RateCut } from '../../../lib/core/rate/learn'
import type { Rate } from '../../../lib/core/rate/rate'
import { oneAHead } from '../../../lib/core/rate/one-a-head'
import { recordRate } from '../../../lib/core/rate/record-rate'
import { depthAtCentroidIn, isProven, taughtBy, uDepthThou } from '../../../lib/core/rate/shop-cuts'
import { seeded } from './random'

const prior: Rate = { ccPerThou: 1 / 6, uCcPerThou: 0.05 / 6, cuts: 0, prior: 'outline' }
const known = (cc: number) => ({ cc, uCc: 0.15 })
const touchOff = 'touch-off' as const
const level = (depthIn: number) => ({ shallowIn: depthIn, deepIn: depthIn })
const cut = (depthThou: number, tookCc: number, likeForLike = true): RateCut => ({
  depthThou,
  beforeCc: 80,
  uBeforeCc: 0.1,
  afterCc: 80 - tookCc,
  uAfterCc: 0.1,
  likeForLike,
})

describe('what a cut teaches', () => {
  it('counts depth where the chamber’s opening has its centre', () => {
    // 20 + 63·0.635 = 60.005 thou [common practice: such a cut takes about 10 cc at six thou per cc].
    const taught = taughtBy(
      { edges: { shallowIn: 0.02, deepIn: 0.083 }, depthBy: touchOff, before: known(75), after: known(65), whyNot: '' },
      0.635,
    )
    expect(taught.cut?.depthThou).toBeCloseTo(60.005, 9)
    expect(taught).toMatchObject({ whyNot: '', cut: { likeForLike: true, beforeCc: 75, afterCc: 65 } })
    expect(depthAtCentroidIn({ shallowIn: 0.083, deepIn: 0.02 }, 0.25)).toBeCloseTo(0.06725, 12)
  })

  it('needs the centre for a tilted cut alone', () => {
    const told = { depthBy: touchOff, before: known(75), after: known(72), whyNot: '' }
    expect(taughtBy({ ...told, edges: level(0.018) }, null).cut?.depthThou).toBeCloseTo(18, 9)
    for (const share of [null, -0.1, 1.1, Number.MAX_VALUE])
      expect(taughtBy({ ...told, edges: { shallowIn: 0.02, deepIn: 0.083 } }, share)).toEqual({
        cut: null,
        whyNot: 'the casting record gives no centre of the opening between the edges',
      })
  })

  it('does not count what cannot be, so that one wrong figure spoils no casting', () => {
    const why = (depthIn: number, afterCc: number) =>
      taughtBy({ edges: level(depthIn), depthBy: touchOff, before: known(75), after: known(afterCc), whyNot: '' }, 0.5)
        .whyNot
    expect(why(0.018, 72)).toBe('')
    expect(why(0.018, 75)).toMatch(/took no volume/)
    expect(why(0.018, 76)).toMatch(/took no volume/)
    for (const depthIn of [0, -0.01, 0.6, NaN]) expect(why(depthIn, 72)).toMatch(/depth is not possible/)
  })

  it('carries on why it is not like for like', () => {
    const told = {
      edges: level(0.018),
      depthBy: touchOff,
      before: known(75),
      after: known(72),
      whyNot: 'seat work between the two cc',
    }
    expect(taughtBy(told, 0.5)).toMatchObject({ cut: { likeForLike: false }, whyNot: told.whyNot })
  })
})

it('two visits of one head are one head: the deeper cut counts, whichever came first', () => {
  const visit = (headId: string, depthThou: number, likeForLike = true) => ({
    headId,
    taught: { cut: cut(depthThou, depthThou / 6, likeForLike), whyNot: '' },
  })
  const whys = (...visits: ReturnType<typeof visit>[]) => oneAHead(visits).map(({ taught }) => taught.whyNot)
  const another = 'another cut of this head counts'
  expect(whys(visit('a', 6), visit('a', 18), visit('b', 6))).toEqual([another, '', ''])
  expect(whys(visit('a', 18), visit('a', 6))).toEqual(['', another])
  expect(whys(visit('a', 18, false), visit('a', 6))).toEqual(['', ''])
  expect(whys(visit('', 6), visit('', 18))).toEqual(['', ''])
})

it('its depth is known by what measured it', () => {
  expect(uDepthThou('touch-off', 0.8)).toBe(0.8)
  expect(uDepthThou('corners', 0.8)).toBe(0.5)
  expect(uDepthThou('both', 1.2)).toBeCloseTo(1.3, 12) // 5, 12 and 13
})

/** No spread between heads, so that the cuts alone weigh. */
const rateOf = (prior_: Rate, cuts: readonly RateCut[], depthThou: number | null, depthErrorThou = 0.5, part = 0) =>
  must(recordRate(prior_, cuts, depthThou, { depthErrorThou, betweenHeadPart: part })).rate

describe('the rate of a casting', () => {
  it('with many cuts comes to least squares through the origin over the cuts like it (simple-statistics)', () => {
    const draw = seeded(11)
    // A drafted wall: long cuts take more a thou than short ones.
    const cuts = Array.from({ length: 300 }, (_, at) => {
      const long = at % 3 === 0
      const depthThou = (long ? 60 : 10) * (1 + 0.3 * draw.uniform())
      return cut(depthThou, (long ? 0.24 : 0.2) * depthThou + draw.normal(0, 0.15), at % 7 !== 0)
    })
    const fitted = (of: readonly RateCut[]): number => {
      const points = of.map((one) => [one.depthThou, one.beforeCc - one.afterCc])
      return linearRegression([...points, ...points.map((point) => point.map((value) => -value))]).m
    }
    const counted = cuts.filter((one) => one.likeForLike)
    // Next to nothing believed before.
    const open = { ...prior, uCcPerThou: 10 }
    // Nothing is screened here: what is asked is the fit.
    const counts = cuts.map((one) => ({ ...one, ruling: 'count' as const }))
    const short = counted.filter((one) => one.depthThou < 20)
    const rate = rateOf(open, counts, 12, 0)
    expect(rate.cuts).toBe(short.length)
    expect(rate.ccPerThou).toBeCloseTo(fitted(short), 4)
    expect(rateOf(open, counts, null, 0).ccPerThou).toBeCloseTo(fitted(counted), 4)
    expect(fitted(counted) - fitted(short)).toBeGreaterThan(0.02)
  })

  it('a cut of like depth that does not count hides none that does', () => {
    const rate = rateOf(prior, [cut(60, 10), cut(12, 9, false)], 12)
    expect(rate).toEqual(must(learnRate(prior, [cut(60, 10)])))
  })

  it('is the record’s own while no cut counts', () => {
    expect(rateOf(prior, [], 18)).toEqual(prior)
    expect(rateOf(prior, [cut(18, 3, false)], 18)).toEqual(prior)
  })

  it('is proven by two cuts and five per cent, and by neither alone', () => {
    const of = (cuts: number, part: number): Rate => ({
      ccPerThou: 0.2,
      uCcPerThou: 0.2 * part,
      cuts,
      prior: 'none',
    })
    expect(isProven(of(2, 0.05))).toBe(true)
    expect(isProven(of(1, 0.01))).toBe(false)
    expect(isProven(of(9, 0.051))).toBe(false)
    // With 3 % between heads, 20 thou at six thou per cc: √(0.05² + 0.03²)·3.333 = 0.194 cc, and 0.5/0.194 = 2.57, which
    // is where half a per cent of a normal variable lies beyond (2.576, any table).
    expect(0.5 / (Math.hypot(0.05, 0.03) * (20 / 6))).toBeCloseTo(2.576, 1)
  })
})
