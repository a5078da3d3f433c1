import { add, inv, matrix, multiply, transpose, type Matrix } from 'mathjs'
import { describe, expect, it } from 'vitest'
import { furtherReadings, type HeadRead } from '../../../lib/core/at-mill/further-readings'
import { headEstimate, type HeadAcross } from '../../../lib/core/at-mill/head-estimate'
import type { ChamberMean } from '../../../lib/core/chamber/burette'
import type { Rate } from '../../../lib/core/rate/rate'
import { seeded } from '../rate/random'

const rate: Rate = { ccPerThou: 0.16, uCcPerThou: 0.01, cuts: 3, prior: 'outline' }
const known = (meanCc: number, uCc: number) => ({ meanCc, uCc })
const estimated = (head: HeadAcross) => {
  const estimate = headEstimate(head)
  if (!estimate) throw new Error('It has a chamber.')
  return estimate
}

describe('what a head holds and what its cut says of its rate', () => {
  it('one chamber, no depth error, worked by hand', () => {
    // Loss read 1.2 with 0.09 + 0.09, believed 1.6 with (10·0.01)² = 0.01: gain 0.01/0.19 of −0.4.
    const { mean, rate: learned } = estimated({
      chambers: [{ chamber: '1', before: known(64, 0.3), since: known(62.8, 0.3) }],
      depthThou: 10,
      uDepthThou: 0,
      rate,
    })
    // k: 0.16 + 0.001·(−0.4)/0.19·(−1)·… the loss was smaller, so the rate is: 0.16 − 0.1·0.01·0.4·10/1.9 = 0.157895.
    expect(learned.ccPerThou).toBeCloseTo(0.16 - (0.01 ** 2 * 10 * 0.4) / 0.19, 12)
    expect(learned.uCcPerThou ** 2).toBeCloseTo(0.01 ** 2 * (1 - 0.01 / 0.19), 12)
    // Now: 62.4 ± √(0.09 + 0.01) believed, 62.8 ± 0.3 read: gain 0.1/0.19.
    expect(mean.cc).toBeCloseTo(62.4 + (0.1 / 0.19) * 0.4, 12)
    expect(mean.uCc ** 2).toBeCloseTo((0.1 * 0.09) / 0.19, 12)
    // Covariance before −10·0.0001, times 1 − 0.1/0.19.
    expect(mean.covCcPerThou).toBeCloseTo(-0.001 * (1 - 0.1 / 0.19), 12)
  })

  it('is least squares with weights 1/variance, by the inverse of the normal matrix (mathjs)', () => {
    const draw = seeded(41)
    for (let trial = 0; trial < 40; trial++) {
      const n = 1 + Math.floor(draw.uniform() * 4)
      const chambers = Array.from({ length: n }, (_, at) => ({
        chamber: String(at + 1),
        before: known(60 + 5 * draw.uniform(), 0.1 + 0.3 * draw.uniform()),
        since: at === 0 || draw.uniform() < 0.5 ? known(56 + 5 * draw.uniform(), 0.1 + 0.3 * draw.uniform()) : null,
      }))
      const depthThou = 5 + 30 * draw.uniform()
      const got = estimated({ chambers, depthThou, uDepthThou: 0.5, rate })
      const row = (at: number) => [...chambers.map((_, i) => (i === at ? 1 : 0)), -depthThou, -0.16]
      const seen = [
        ...chambers.map(({ before }, at) => ({
          row: chambers.map((_, i) => Number(i === at)).concat(0, 0),
          ...before,
        })),
        { row: [...chambers.map(() => 0), 1, 0], meanCc: 0.16, uCc: 0.01 },
        { row: [...chambers.map(() => 0), 0, 1], meanCc: 0, uCc: 0.5 },
        ...chambers.flatMap(({ since }, at) => (since ? [{ row: row(at), ...since }] : [])),
      ]
      const design = matrix(seen.map((one) => one.row))
      const weighed = matrix(seen.map((one) => one.row.map((value) => value / one.uCc ** 2)))
      const cov = inv(multiply(transpose(design), weighed)) as Matrix
      const means = multiply(cov, multiply(transpose(weighed), matrix(seen.map((one) => [one.meanCc])))) as Matrix
      const whole = chambers
        .map((_, at) => row(at))
        .reduce((a, b) => add(a, b) as number[])
        .map((value) => value / n)
      const dot = (a: readonly number[], of: Matrix, column: number) =>
        a.reduce((sum, value, at) => sum + value * (of.get([at, column]) as number), 0)
      const spread = whole.map((_, column) => dot(whole, cov, column))
      expect(got.mean.cc).toBeCloseTo(dot(whole, means, 0), 8)
      expect(got.mean.uCc ** 2).toBeCloseTo(
        spread.reduce((sum, value, at) => sum + value * (whole[at] ?? 0), 0),
        10,
      )
      expect(got.mean.covCcPerThou).toBeCloseTo(spread[n] ?? NaN, 10)
      expect(got.rate.ccPerThou).toBeCloseTo(means.get([n, 0]) as number, 10)
      expect(got.rate.uCcPerThou ** 2).toBeCloseTo(cov.get([n, n]) as number, 12)
      expect(got.chambers[0]?.cc).toBeCloseTo(dot(row(0), means, 0), 8)
    }
  })

  it('nothing cut: what was read before, and the rate as it was', () => {
    const {
      mean,
      chambers,
      rate: same,
    } = estimated({
      chambers: [
        { chamber: '1', before: known(64, 0.3), since: null },
        { chamber: '3', before: known(63, 0.4), since: null },
      ],
      depthThou: 0,
      uDepthThou: 0.5,
      rate,
    })
    expect(mean).toEqual({ cc: 63.5, uCc: 0.25, covCcPerThou: 0 }) // 3, 4 and 5, halved
    expect(chambers[1]).toMatchObject({ chamber: '3', cc: 63, covCcPerThou: 0 })
    expect(same).toBe(rate)
  })

  it('a reading that would turn the rate negative does not teach', () => {
    const { rate: same } = estimated({
      chambers: [{ chamber: '1', before: known(64, 0.001), since: known(70, 0.001) }],
      depthThou: 10,
      uDepthThou: 0.5,
      rate: { ...rate, uCcPerThou: 1 },
    })
    expect(same.ccPerThou).toBe(0.16)
    expect(headEstimate({ chambers: [], depthThou: 0, uDepthThou: 0.5, rate })).toBeNull()
  })
})

describe('how many further readings', () => {
  const mean = (meanCc: number, count: number, readingCc = 0.3): ChamberMean => ({
    meanCc,
    rangeCc: 0,
    count,
    readingCc,
    uCc: Math.sqrt(readingCc ** 2 / count + 0.04 / 12),
  })
  const head = (counts: readonly number[], over: Partial<HeadRead> = {}): HeadRead => ({
    chambers: counts.map((count, at) => ({ chamber: String(at + 1), before: mean(64, count), since: null })),
    depthThou: 0,
    uDepthThou: 0.5,
    rate,
    ...over,
  })
  const uMean = (one: { mean: { uCc: number } }) => one.mean.uCc

  it('one chamber read twice is known to 0.220; three readings make √(0.03 + 0.00333) = 0.183', () => {
    expect(furtherReadings(head([2]), 0.2, uMean, 0.2)).toEqual([{ chamber: '1', readings: 1 }])
    expect(furtherReadings(head([1]), 0.2, uMean, 0.2)).toEqual([{ chamber: '1', readings: 2 }])
    expect(furtherReadings(head([3]), 0.2, uMean, 0.2)).toEqual([])
  })

  it('each goes to the chamber that helps most', () => {
    // u² of the mean of two: (0.09/1 + 0.09/4 + 2·0.00333)/4 = 0.02979. One more of chamber 1: 0.01854, of chamber 2: 0.02867.
    expect(furtherReadings(head([1, 4]), 0.2, uMean, 0.15)).toEqual([{ chamber: '1', readings: 1 }])
    // After the cut it is the reading since the cut that is owed.
    const cut = head([2, 2], { depthThou: 10, rate: { ...rate, uCcPerThou: 0.05 } })
    expect(furtherReadings(cut, 0.2, uMean, 0.2)?.length).toBeGreaterThan(0)
  })

  it('says so when the division is too coarse: r/√12 alone is 0.29 of a burette of one cc', () => {
    expect(furtherReadings(head([2]), 1, uMean, 0.2)).toBeNull()
  })
})
