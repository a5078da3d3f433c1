import fc from 'fast-check'
import { cumulativeStdNormalProbability } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { must } from '../../../lib/core/errors'
import { advisePass, type PassInput } from '../../../lib/core/rate/next-pass'
import type { Rate } from '../../../lib/core/rate/rate'

const rate: Rate = { ccPerThou: 1 / 6, uCcPerThou: 0.0097, cuts: 0, prior: 'outline' }
const proven: Rate = { ccPerThou: 1 / 6, uCcPerThou: 0.002, cuts: 8, prior: 'outline' }
const input: PassInput = { presentCc: 63, uPresentCc: 0.1, targetCc: 60, toleranceCc: 0.5, rate }

/** The risk that the design names, worked out afresh by the package's normal table. */
const risk = (roomCc: number, uCc: number, { ccPerThou: k, uCcPerThou: uK }: Rate, d: number, uD = 0.5) =>
  1 - cumulativeStdNormalProbability((roomCc - k * d) / Math.hypot(uCc, uK * d, k * uD))

const pass = (given: PassInput) => {
  const advice = must(advisePass(given))
  if (advice.kind !== 'pass') throw new Error(advice.why)
  return advice
}
const refusal = (given: PassInput) => {
  const advice = advisePass(given)
  return advice.ok ? advice.value.kind : advice.refusal.code
}

describe('the next pass', () => {
  it('goes all the way when that is safe: 3 cc at six thou per cc are 18 thou', () => {
    const advice = pass({ ...input, rate: proven })
    expect(advice).toMatchObject({ depthThou: 18, nominalThou: 18, isNominal: true, bound: 'nominal' })
    expect(advice.leavesCc).toBeCloseTo(60, 9)
  })

  it('stops short when it is not, at half a per cent of risk: worked by hand', () => {
    // At 17.5: 63 − 2.9167 − 59.5 = 0.5833; √(0.1² + 0.16975² + 0.08333²) = 0.2139; ratio 2.727 > 2.576: safe.
    // At 18: 0.5; √(0.1² + 0.1746² + 0.08333²) = 0.2178; ratio 2.296: not safe.
    const advice = pass(input)
    expect(advice).toMatchObject({ depthThou: 17.5, nominalThou: 18, isNominal: false, bound: 'tolerance' })
    expect(advice.leavesCc).toBeCloseTo(60.0833, 3)
    expect(advice.why).toContain('measure again')
  })

  it('rounds down to half a thou, never up', () => {
    expect(pass({ ...input, presentCc: 61.16, rate: proven })).toMatchObject({
      depthThou: 6.5,
      nominalThou: 6.5,
    }) // 6.96
  })

  it('no pass at the target or under it; hold when it is out of tolerance already', () => {
    expect(refusal({ ...input, presentCc: 60 })).toBe('none')
    expect(refusal({ ...input, presentCc: 59.5 })).toBe('none')
    expect(refusal({ ...input, presentCc: 59.49 })).toBe('hold')
  })

  it('measure again when the tolerance is less than two and a half times what the cc are known to', () => {
    expect(refusal({ ...input, uPresentCc: 0.2 })).toBe('pass')
    expect(refusal({ ...input, uPresentCc: 0.2001 })).toBe('measure-again')
    // One chamber read once: the shop's 0.3 cc and a burette of 0.2 cc make √(0.09 + 0.04/12) = 0.3055.
    expect(refusal({ ...input, uPresentCc: Math.hypot(0.3, 0.2 / Math.sqrt(12)) })).toBe('measure-again')
  })

  it('a rate that began on nothing takes no more than half until two cuts stand behind it', () => {
    const guess: Rate = { ccPerThou: 1 / 6, uCcPerThou: 0.001, cuts: 0, prior: 'none' }
    expect(pass({ ...input, rate: guess })).toMatchObject({
      depthThou: 9,
      nominalThou: 18,
      bound: 'unproven',
    })
    expect(pass({ ...input, rate: { ...guess, cuts: 1 } })).toMatchObject({ depthThou: 9, bound: 'unproven' })
    expect(pass({ ...input, rate: { ...guess, cuts: 2 } })).toMatchObject({ depthThou: 18, bound: 'nominal' })
  })

  it('a head whose truth is 4.7 thou per cc is not scrapped by a guess of 6', () => {
    const guess: Rate = { ccPerThou: 1 / 6, uCcPerThou: 1 / 24, cuts: 0, prior: 'none' }
    for (const presentCc of [61, 63, 66, 70]) {
      const advice = pass({ ...input, presentCc, rate: guess })
      expect(presentCc - advice.depthThou / 4.7).toBeGreaterThan(59.5)
    }
  })

  it('the smallest chamber holds the class minimum, at the same risk', () => {
    const smallest = { cc: 61, uCc: 0.15, classMinimumCc: 59.5 }
    const advice = pass({ ...input, rate: proven, smallest })
    expect(advice.bound).toBe('class-minimum')
    expect(risk(1.5, 0.15, proven, advice.depthThou)).toBeLessThanOrEqual(0.0051)
    expect(risk(1.5, 0.15, proven, advice.depthThou + 0.5)).toBeGreaterThan(0.005)
    expect(refusal({ ...input, rate: proven, smallest: { ...smallest, cc: 59.4 } })).toBe('hold')
    expect(refusal({ ...input, rate: proven, smallest: { ...smallest, cc: 59.5 } })).toBe('unreachable')
  })

  it('says so when the setting of the mill is too coarse for the tolerance', () => {
    expect(refusal({ ...input, presentCc: 60.2, uPresentCc: 0, toleranceCc: 0.1, depthErrorThou: 1 })).toBe(
      'unreachable',
    )
    expect(refusal({ ...input, presentCc: 60.05, uPresentCc: 0, toleranceCc: 0.1, depthErrorThou: 1 })).toBe('none')
  })

  it('refuses what cannot be', () => {
    const wrong: Partial<PassInput>[] = [
      { presentCc: NaN },
      { presentCc: 401 },
      { uPresentCc: -0.1 },
      { targetCc: 0 },
      { toleranceCc: 0 },
      { rate: { ...rate, ccPerThou: 0 } },
      { rate: { ...rate, uCcPerThou: Infinity } },
      { depthErrorThou: -1 },
    ]
    for (const one of wrong) expect(refusal({ ...input, ...one })).toBe('out-of-range')
    expect(refusal({ ...input, presentCc: 200, targetCc: 100 })).toBe('unreachable') // 600 thou
  })
})

describe('for any head', () => {
  const anyHead = fc.record({
    presentCc: fc.double({ min: 20, max: 150, noNaN: true }),
    uPresentCc: fc.double({ min: 0, max: 0.4, noNaN: true }),
    targetCc: fc.double({ min: 20, max: 150, noNaN: true }),
    toleranceCc: fc.double({ min: 0.1, max: 2, noNaN: true }),
    depthErrorThou: fc.double({ min: 0, max: 2, noNaN: true }),
    rate: fc.record({
      ccPerThou: fc.double({ min: 0.05, max: 0.5, noNaN: true }),
      uCcPerThou: fc.double({ min: 0, max: 0.2, noNaN: true }),
      cuts: fc.nat(5),
      prior: fc.constantFrom('outline' as const, 'perimeter' as const, 'none' as const),
    }),
  })

  it('a pass is a whole number of half thou, not past the nominal, and its risk at most half a per cent', () => {
    fc.assert(
      fc.property(anyHead, (head) => {
        const advice = advisePass(head)
        if (!advice.ok || advice.value.kind === 'none') return
        const { depthThou, nominalThou, leavesCc } = advice.value
        expect(Number.isInteger(depthThou * 2) && depthThou > 0).toBe(true)
        expect(depthThou).toBeLessThanOrEqual(nominalThou)
        expect(leavesCc).toBeGreaterThanOrEqual(head.targetCc - 1e-6)
        const room = head.presentCc - head.targetCc + head.toleranceCc
        const spread = Math.hypot(
          head.uPresentCc,
          head.rate.uCcPerThou * depthThou,
          head.rate.ccPerThou * head.depthErrorThou,
        )
        // 2.5758 deviations: half a per cent, from any normal table.
        if (spread > 0) expect((room - head.rate.ccPerThou * depthThou) / spread).toBeGreaterThan(2.5757)
      }),
      { numRuns: 2000 },
    )
  })

  it('the better the rate is known, the deeper the pass, never the shallower', () => {
    fc.assert(
      fc.property(anyHead, (head) => {
        const worse = advisePass(head)
        const better = advisePass({ ...head, rate: { ...head.rate, uCcPerThou: head.rate.uCcPerThou / 2 } })
        if (!worse.ok || worse.value.kind === 'none') return
        expect(better.ok && better.value.kind === 'pass' && better.value.depthThou).toBeGreaterThanOrEqual(
          worse.value.depthThou,
        )
      }),
    )
  })

  it('answers any number at all, finite or not, without NaN', () => {
    const any = fc.double()
    fc.assert(
      fc.property(any, any, any, any, any, any, (presentCc, uPresentCc, targetCc, toleranceCc, k, uK) => {
        const advice = advisePass({
          presentCc,
          uPresentCc,
          targetCc,
          toleranceCc,
          rate: { ...rate, ccPerThou: k, uCcPerThou: uK },
        })
        if (advice.ok && advice.value.kind === 'pass') expect(Number.isFinite(advice.value.leavesCc)).toBe(true)
      }),
    )
  })
})
