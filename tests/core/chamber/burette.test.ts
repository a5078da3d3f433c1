import fc from 'fast-check'
import { max, mean, sum, standardDeviation } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { chamberMean, headCc } from '../../../lib/core/chamber/burette'
import { matchChambers } from '../../../lib/core/chamber/match'
import { must } from '../../../lib/core/errors'

const burette = { divisionCc: 0.2, repeatabilityCc: 0.3 }
const cc = fc.double({ min: 1, max: 400, noNaN: true })

describe('one chamber from its repeats', () => {
  it('two readings, worked by hand: the default 0.3 is a floor, u² = 0.09/2 + 0.04/12', () => {
    const chamber = must(chamberMean([62.1, 62.3], burette))
    expect(chamber.meanCc).toBeCloseTo(62.2, 12)
    expect(chamber.rangeCc).toBeCloseTo(0.2, 12)
    expect(chamber.uCc).toBeCloseTo(Math.sqrt(0.045 + 0.04 / 12), 12)
  })

  it('one reading takes the shop’s repeatability: u² = 0.09 + 0.04/12', () => {
    expect(must(chamberMean([62.1], burette)).uCc).toBeCloseTo(0.305505, 6)
  })

  it('agrees with simple-statistics for any repeats', () => {
    fc.assert(
      fc.property(fc.array(cc, { minLength: 2, maxLength: 8 }), (readings) => {
        const chamber = must(chamberMean(readings, burette))
        const about = mean(readings)
        const squares = sum(readings.map((reading) => (reading - about) ** 2))
        const pooled = Math.max(0.09, (3 * 0.09 + squares) / (3 + readings.length - 1))
        const u = Math.sqrt(pooled / readings.length + burette.divisionCc ** 2 / 12)
        expect(chamber.meanCc).toBeCloseTo(mean(readings), 9)
        expect(chamber.uCc / u).toBeCloseTo(1, 9)
      }),
    )
  })

  it('of readings that a burette rounds, the mean lies within two u of the truth as often as it should', () => {
    // Evenly placed quantiles stand for chance: readings of 62.03 cc, s 0.1, read to 0.2 cc, three at a time.
    const spread = [-1.2816, -0.8416, -0.5244, -0.2533, 0, 0.2533, 0.5244, 0.8416, 1.2816]
    const misses = spread.flatMap((a) =>
      spread.flatMap((b) =>
        spread.map((c) => {
          const read = [a, b, c].map((z) => Math.round((62.03 + 0.1 * z) / 0.2) * 0.2)
          const { meanCc, uCc } = must(chamberMean(read, burette))
          return Math.abs(meanCc - 62.03) > 2 * uCc
        }),
      ),
    )
    expect(misses.filter(Boolean).length / misses.length).toBeLessThan(0.05)
  })
})

describe('a head from its chambers', () => {
  const head = (readings: number[]) => must(headCc(readings.map((reading) => must(chamberMean([reading], burette)))))

  it('by hand: 62.0, 62.4, 62.2, 61.8', () => {
    const { meanCc, spreadCc, smallestCc, largestCc, uCc } = head([62, 62.4, 62.2, 61.8])
    expect(meanCc).toBeCloseTo(62.1, 12)
    expect(spreadCc).toBeCloseTo(0.6, 12)
    expect([smallestCc, largestCc]).toEqual([61.8, 62.4])
    expect(uCc).toBeCloseTo(0.305505 / 2, 6) // four alike: u/√4
  })

  it('the smallest chamber is named with its own uncertainty', () => {
    const once = must(chamberMean([60], burette))
    const twice = must(chamberMean([62, 62], burette))
    expect(must(headCc([twice, once])).uSmallestCc).toBe(once.uCc)
  })

  it('agrees with simple-statistics', () => {
    fc.assert(
      fc.property(fc.array(cc, { minLength: 1, maxLength: 12 }), (readings) => {
        const { meanCc, spreadCc, largestCc, smallestCc } = head(readings)
        expect(meanCc).toBeCloseTo(mean(readings), 9)
        expect(largestCc).toBe(max(readings))
        expect(spreadCc).toBe(largestCc - smallestCc)
        expect(spreadCc + 1e-9).toBeGreaterThanOrEqual(standardDeviation(readings))
      }),
    )
  })
})

describe('match', () => {
  const chambers = (...volumes: number[]) =>
    volumes.map((volume, at) => ({ tag: 'T-0001', chamber: at + 1, cc: volume }))

  it('each within half a cc of the mean, the end itself allowed', () => {
    expect(must(matchChambers(chambers(61.5, 62.5))).matched).toBe(true)
    const off = must(matchChambers(chambers(61, 62, 62, 63)))
    expect(off).toMatchObject({ meanCc: 62, spreadCc: 2, matched: false })
    expect(off.outside.map(({ chamber, offCc }) => [chamber, offCc])).toEqual([
      [1, -1],
      [4, 1],
    ])
    expect(must(matchChambers(chambers(61, 62, 62, 63), 1)).matched).toBe(true)
  })
})

describe('refusals', () => {
  it.each([
    ['no reading', () => chamberMean([], burette), 'missing'],
    ['no chamber', () => headCc([]), 'missing'],
    ['nothing to match', () => matchChambers([]), 'missing'],
    ['too small', () => chamberMean([62, 0.9], burette), 'out-of-range'],
    ['too large', () => chamberMean([62, 401], burette), 'out-of-range'],
    ['not a number', () => chamberMean([62, NaN], burette), 'out-of-range'],
    ['endless', () => chamberMean([Infinity], burette), 'out-of-range'],
    ['a division below nothing', () => chamberMean([62], { ...burette, divisionCc: -1 }), 'out-of-range'],
    ['no repeatability', () => chamberMean([62], { ...burette, repeatabilityCc: NaN }), 'out-of-range'],
    ['a match by nothing', () => matchChambers([{ tag: 'T-1', chamber: 1, cc: 62 }], NaN), 'out-of-range'],
    ['an impossible one in the match', () => matchChambers([{ tag: 'T-1', chamber: 1, cc: -62 }]), 'out-of-range'],
  ])('%s', (_, ask, code) => {
    expect(ask()).toMatchObject({ ok: false, refusal: { code } })
  })
})
