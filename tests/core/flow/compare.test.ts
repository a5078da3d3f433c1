import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { must } from '@/lib/core/errors'
import { compareFlow } from '@/lib/core/flow/compare'
import { exhaustToIntake } from '@/lib/core/flow/exhaust-to-intake'
import type { FlowConditions, FlowPoint, FlowRun } from '@/lib/core/flow/types'

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

const points = (...pairs: readonly (readonly [number, number | null, string?])[]): FlowPoint[] =>
  pairs.map(([liftIn, flowCfm, why]) => ({ liftIn, flowCfm, notTaken: why ?? null }))

const run = (taken: readonly FlowPoint[], more: Partial<FlowConditions> = {}): FlowRun => ({
  conditions: { ...conditions, ...more },
  points: taken,
})

describe('before against after', () => {
  it('gives the difference in cfm and per cent at each lift', () => {
    const { rows } = must(compareFlow(run(points([0.1, 60], [0.2, 120])), run(points([0.1, 63], [0.2, 117]))))
    expect(rows.map((row) => [row.liftIn, row.diffCfm, row.diffPercent])).toEqual([
      [0.1, 3, 5],
      [0.2, -3, -2.5],
    ])
  })

  it('says what lies within 2·√2 of the repeatability of a run', () => {
    // By hand: 2·1.41421·1 % of 200 cfm = 5.657 cfm.
    const within = (after: number) =>
      must(compareFlow(run(points([0.3, 200])), run(points([0.3, after])), { repeatability: 0.01 })).rows[0]
        ?.withinRepeatability
    expect([205.65, 194.35, 205.66, 194.34].map(within)).toEqual([true, true, false, false])
  })

  it('a wider bench judges more to be within', () => {
    const judged = must(compareFlow(run(points([0.3, 200])), run(points([0.3, 210])), { repeatability: 0.02 }))
    expect(judged.rows[0]?.withinRepeatability).toBe(true)
  })

  it('takes means over thirds of the span that both runs cover', () => {
    // Straight lines: flow = 500·lift before, 550·lift after; common span 0.2–0.5, thirds at 0.3 and 0.4.
    const before = run(points([0.1, 50], [0.2, 100], [0.35, 175], [0.5, 250]))
    const after = run(points([0.2, 110], [0.4, 220], [0.6, 330]))
    const { means } = must(compareFlow(before, after))
    expect(
      means.map((m) => [m.band, +m.fromIn.toFixed(6), +m.toIn.toFixed(6), +(m.beforeCfm ?? 0).toFixed(6)]),
    ).toEqual([
      ['low', 0.2, 0.3, 125],
      ['middle', 0.3, 0.4, 175],
      ['high', 0.4, 0.5, 225],
      ['whole', 0.2, 0.5, 175],
    ])
    for (const mean of means) expect(mean.diffPercent).toBeCloseTo(10, 6)
  })

  it('a lift that was not taken keeps its reason and is no zero', () => {
    const { rows, means } = must(
      compareFlow(
        run(points([0.1, 60], [0.2, 120], [0.6, null, 'retainer meets the seal'])),
        run(points([0.1, 60], [0.2, 121], [0.6, 250], [0.7, 251])),
      ),
    )
    expect(rows[2]).toMatchObject({
      notTakenBefore: 'retainer meets the seal',
      notTakenAfter: null,
      diffCfm: null,
      diffPercent: null,
      withinRepeatability: null,
    })
    expect(rows[3]).toMatchObject({ notTakenBefore: 'not run at this lift', afterCfm: 251 })
    expect(means.at(-1)?.toIn).toBe(0.2)
  })

  it('converts the run before to the pressure of the run after, and says so', () => {
    const { rows, differs, remarks } = must(
      compareFlow(run(points([0.3, 100]), { testPressureInH2O: 10 }), run(points([0.3, 167.33]))),
    )
    expect(rows[0]?.beforeCfm).toBeCloseTo(167.33, 2)
    expect(differs).toEqual([])
    expect(remarks).toEqual(['before converted from 10 to 28 inH₂O'])
  })

  it('takes the leak off both', () => {
    const { rows } = must(compareFlow(run(points([0.3, 100]), { leakCfm: 2 }), run(points([0.3, 103]), { leakCfm: 5 })))
    expect(rows[0]).toMatchObject({ beforeCfm: 98, afterCfm: 98, diffCfm: 0 })
  })

  it('no per cent of nothing', () => {
    expect(must(compareFlow(run(points([0, 0])), run(points([0, 1])))).rows[0]).toMatchObject({
      diffCfm: 1,
      diffPercent: null,
    })
  })

  it('no means when the runs share no span', () => {
    const { means } = must(compareFlow(run(points([0.1, 60], [0.2, 120])), run(points([0.3, 180], [0.4, 230]))))
    expect(means).toEqual([])
  })

  it('a run against itself shows nothing, and swapped runs show the opposite', () => {
    const flows = fc.array(fc.double({ min: 1, max: 400, noNaN: true }), { minLength: 2, maxLength: 12 })
    fc.assert(
      fc.property(flows, flows, (a, b) => {
        const asRun = (list: readonly number[]) =>
          run(list.map((flowCfm, i) => ({ liftIn: i / 20, flowCfm, notTaken: null })))
        const self = must(compareFlow(asRun(a), asRun(a)))
        expect(self.means.every((mean) => mean.diffCfm === 0 && mean.withinRepeatability)).toBe(true)
        const there = must(compareFlow(asRun(a), asRun(b))).means
        const back = must(compareFlow(asRun(b), asRun(a))).means
        there.forEach((mean, i) => expect(mean.diffCfm).toBeCloseTo(-(back[i]?.diffCfm ?? NaN), 9))
      }),
    )
  })

  it('refuses an intake run against an exhaust run, a lift twice and a leak above the flow', () => {
    const taken = points([0.1, 60], [0.2, 120])
    const code = (before: FlowRun, after: FlowRun) => {
      const result = compareFlow(before, after)
      return result.ok ? '' : result.refusal.code
    }
    expect(code(run(taken), run(taken, { port: 'exhaust' }))).toBe('contradiction')
    expect(code(run(taken), run(points([0.1, 60], [0.1, 61])))).toBe('contradiction')
    expect(code(run(taken), run(taken, { leakCfm: 61 }))).toBe('contradiction')
  })
})

describe('like for like', () => {
  const differs = (more: Partial<FlowConditions>) =>
    must(compareFlow(run(points([0.1, 60])), run(points([0.1, 60]), more))).differs

  it('allows 0.010 in of bore fixture and 0.005 in of valve, and no more', () => {
    expect(differs({ boreFixtureIn: 4.135, valveDiameterIn: 2.025 })).toEqual([])
    expect(differs({ boreFixtureIn: 4.136 })).toEqual(['bore fixture 4.125 in before, 4.136 in after'])
    expect(differs({ valveDiameterIn: 2.0255 })).toEqual(['valve 2.020 in before, 2.026 in after'])
  })

  it('wants the same fittings', () => {
    expect(differs({ entryFitting: 'clay' })).toEqual(['entry fitting radius plate before, clay after'])
    expect(differs({ entryFitting: ' Radius plate ' })).toEqual([])
    expect(differs({ exhaustFitting: '' })).toEqual(['exhaust fitting none before, not noted after'])
  })

  it('what was not noted is not the same', () => {
    expect(differs({ testPressureInH2O: null })).toEqual(['test pressure not noted after'])
    expect(differs({ boreFixtureIn: null })).toEqual(['bore fixture not noted after'])
    expect(differs({ leakCfm: 2 })).toEqual(['leak read only after'])
  })

  it('another head is headed so, and still like for like', () => {
    const other = must(compareFlow(run(points([0.1, 60])), run(points([0.1, 60]), { headId: 'two' })))
    expect(other.differs).toEqual([])
    expect(other.remarks).toEqual(['different head'])
  })
})

describe('exhaust to intake', () => {
  it('121 and 93 at 10 inH₂O make 76.9 % (measured pair in print)', () => {
    const at10 = { testPressureInH2O: 10 }
    const ratio = must(
      exhaustToIntake(run(points([0.5, 121]), at10), run(points([0.5, 93]), { ...at10, port: 'exhaust' })),
    )
    expect(ratio[0]?.percent).toBeCloseTo(76.9, 1)
  })

  it('is taken at one pressure, whichever pressures the runs had', () => {
    const ratio = must(
      exhaustToIntake(
        run(points([0.5, 121 * 1.6733])),
        run(points([0.5, 93]), { testPressureInH2O: 10, port: 'exhaust' }),
      ),
    )
    expect(ratio[0]?.percent).toBeCloseTo(76.9, 1)
  })

  it('leaves out lifts that only one port was run at', () => {
    const ratio = must(
      exhaustToIntake(
        run(points([0.4, 100], [0.5, 121], [0.6, null, 'coil bind'])),
        run(points([0.5, 93], [0.6, 95]), { port: 'exhaust' }),
      ),
    )
    expect(ratio.map((row) => row.liftIn)).toEqual([0.5])
  })

  it('refuses when only one pressure is known, or the ports are swapped', () => {
    const exhaust = run(points([0.5, 93]), { port: 'exhaust' })
    const intake = run(points([0.5, 121]))
    expect(
      exhaustToIntake(intake, { ...exhaust, conditions: { ...exhaust.conditions, testPressureInH2O: null } }).ok,
    ).toBe(false)
    expect(exhaustToIntake(exhaust, intake).ok).toBe(false)
  })
})
