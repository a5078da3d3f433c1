import { describe, expect, it } from 'vitest'
import type { PlanRecord } from '../../../lib/core/cut/plan-record'
import { flatGone } from '../../../lib/core/head-now/gone'
import { planLines, planTitle } from '../../../lib/core/options/plan-words'

const plan: PlanRecord = {
  kind: 'angle-flat',
  flatIn: 0.02,
  angleIn: 0.063,
  angleDeg: 0.6,
  deepEdge: 'exhaust',
  deepestIn: 0.083,
  depthAtCentroidIn: 0.06,
  thouPerCc: 6,
  rateWords: 'from the traced opening',
  presentMeanCc: 75,
  presentNominal: false,
  targetCc: 65,
  predictedAfterCutCc: 65,
  predictedFinishedCc: 65,
  seatWorkGivesCc: 0,
  intakeSideIn: -0.0254,
  intakeRailsIn: 0.012,
  ptvLossIntakeIn: null,
  ptvLossExhaustIn: null,
  compressionBefore: null,
  compressionAfter: null,
  needs: ['needs bore'],
  cautions: [],
}

const valueOf = (label: string, removedBeforeIn: number | null = null) =>
  planLines(plan, removedBeforeIn === null ? null : flatGone(removedBeforeIn)).find((line) => line.label === label)

describe('a plan in words', () => {
  it('names both parts and the edge', () => {
    expect(planTitle(plan)).toBe('Angle cut, then flat cut, 20 thou flat + 63 thou at the exhaust edge')
  })

  it('never speaks of a negative cut at the intake side: it is a gap', () => {
    const side = valueOf('Intake side, to restore port alignment')
    expect(side?.value).toBe('gap of 25.4 thou')
    expect(side?.note).toContain('thicker gasket')
    expect(valueOf('Manifold rails')?.value).toBe('12 thou')
  })

  it('says what is not known instead of guessing', () => {
    expect(valueOf('Removed since new, after this')?.value).toBe('new thickness unknown')
    // 0.010 gone before and 0.083 at the deepest of this cut.
    expect(valueOf('Removed since new, after this', 0.01)?.value).toBe('0.0930 in')
    expect(valueOf('Not computed')?.value).toBe('needs bore')
    expect(valueOf('Compression')).toBeUndefined()
  })
})
