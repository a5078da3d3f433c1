import { describe, expect, it } from 'vitest'
import { earlierFlowWords, flowOfCutsLike, type EarlierFlow } from '@/lib/core/options/earlier-flow'

const cut = (deepestIn: number, more: Partial<EarlierFlow> = {}): EarlierFlow => ({
  tag: `T-${Math.round(deepestIn * 1000)}`,
  jobNumber: '26-0001',
  deepestIn,
  intakePercent: 1.24,
  exhaustPercent: -0.36,
  cutAlone: false,
  ...more,
})

describe('what the shop’s own cuts did to flow', () => {
  it('shows those between half and twice the depth asked, nearest first', () => {
    const found = flowOfCutsLike(
      [0.015, 0.02, 0.035, 0.041, 0.08, 0.081].map((depth) => cut(depth)),
      0.04,
    )
    expect(found.map(({ deepestIn }) => deepestIn)).toEqual([0.041, 0.035, 0.02, 0.08])
    expect(
      flowOfCutsLike(
        [0.03, 0.035, 0.04].map((depth) => cut(depth)),
        0.04,
        2,
      ),
    ).toHaveLength(2)
    expect(flowOfCutsLike([], 0.04)).toEqual([])
  })

  it('says it in words, and whether nothing but the cut lies between', () => {
    expect(earlierFlowWords(cut(0.02))).toBe(
      '20 thou, T-20: intake +1.2 %, exhaust −0.4 %, with all the work of that visit',
    )
    expect(earlierFlowWords(cut(0.02, { exhaustPercent: null, cutAlone: true }))).toBe(
      '20 thou, T-20: intake +1.2 %, the cut alone',
    )
    expect(earlierFlowWords(cut(0.02, { intakePercent: -0.04, exhaustPercent: null }))).toContain('intake +0.0 %')
  })
})
