import fc from 'fast-check'
import { variance } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { must } from '@/lib/core/errors'
import { repeatabilityOf } from '@/lib/core/flow/repeatability'
import type { FlowConditions, FlowRun } from '@/lib/core/flow/types'

const conditions: FlowConditions = {
  testPressureInH2O: 28,
  boreFixtureIn: 4.125,
  valveDiameterIn: 2.02,
  entryFitting: 'radius plate',
  exhaustFitting: 'none',
  leakCfm: null,
  port: 'intake',
  headId: 'one',
}
const run = (flows: readonly (number | null)[], more: Partial<FlowConditions> = {}): FlowRun => ({
  conditions: { ...conditions, ...more },
  points: flows.map((flowCfm, place) => ({
    liftIn: (place + 1) / 10,
    flowCfm,
    notTaken: flowCfm === null ? 'coil bind' : null,
  })),
})

describe('repeatability from repeats', () => {
  it('is one standard deviation of a single run', () => {
    // By hand: ±1 of 200 is ±0.5 %; √(2·0.005²/1) = 0.0070711.
    expect(must(repeatabilityOf([[run([199]), run([201])]]))).toEqual({
      part: expect.closeTo(0.0070711, 7) as number,
      lifts: 1,
      freedom: 1,
    })
  })

  it('is pooled over lifts and groups; a lift read once says nothing', () => {
    // 0.005²·2 + 0.01²·2 = 0.00025 over 2; √0.000125 = 0.0111803.
    const groups = [[run([199, 99, 250]), run([201, 101, null])], [run([80], { port: 'exhaust' })]]
    expect(must(repeatabilityOf(groups))).toEqual({
      part: expect.closeTo(0.0111803, 7) as number,
      lifts: 2,
      freedom: 2,
    })
  })

  it('agrees with a statistics package, three runs and more', () => {
    const flow = fc.integer({ min: 50, max: 400 })
    const lifts = fc
      .integer({ min: 1, max: 8 })
      .chain((width) =>
        fc.array(fc.array(flow, { minLength: width, maxLength: width }), { minLength: 2, maxLength: 5 }),
      )
    fc.assert(
      fc.property(lifts, (runs) => {
        const width = runs[0]?.length ?? 0
        const atLift = Array.from({ length: width }, (_, place) => runs.map((one) => one[place] ?? 0))
        const shares = atLift.map((flows) => {
          const mean = flows.reduce((a, b) => a + b, 0) / flows.length
          return flows.map((one) => one / mean)
        })
        // All lifts have as many readings, so pooling is the plain mean of the sample variances.
        const theirs = Math.sqrt(
          shares.reduce((sum, one) => sum + variance(one) * one.length, 0) / (width * (runs.length - 1)),
        )
        expect(must(repeatabilityOf([runs.map((flows) => run(flows))])).part).toBeCloseTo(theirs, 10)
      }),
    )
  })

  it('a run at another pressure is converted first', () => {
    // 100·√(28/10) = 167.332 cfm: the same run, so no scatter.
    const part = must(repeatabilityOf([[run([167.332]), run([100], { testPressureInH2O: 10 })]])).part
    expect(part).toBeLessThan(1e-5)
  })

  it('is refused where there is nothing to tell it from', () => {
    const code = (groups: readonly (readonly FlowRun[])[]) => {
      const found = repeatabilityOf(groups)
      return found.ok ? null : [found.refusal.code, found.refusal.message]
    }
    expect(code([])).toEqual(['missing', 'Needs one lift that was run twice.'])
    expect(code([[run([200])], [run([201])]])?.[0]).toBe('missing')
    expect(code([[run([0]), run([0])]])?.[0]).toBe('missing')
    expect(code([[run([200]), run([201], { boreFixtureIn: 4 })]])).toEqual([
      'contradiction',
      'These are not repeats: bore fixture 4.125 in before, 4.000 in after.',
    ])
    expect(code([[run([200]), run([201], { headId: 'two' })]])?.[0]).toBe('contradiction')
    expect(code([[run([200]), run([150], { port: 'exhaust' })]])?.[0]).toBe('contradiction')
    expect(code([[run([20], { leakCfm: 30 }), run([20], { leakCfm: 30 })]])?.[0]).toBe('contradiction')
  })
})
