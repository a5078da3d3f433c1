import { describe, expect, it } from 'vitest'
import { finishedCautionText } from '@/lib/words/finished'
import { edgeThicknessIn, finishAskedMicroIn, mateDiffers, roughFinish } from '@/lib/core/route/finished-checks'

const corners = (intake: number, exhaust: number) => ({
  'intake-1': intake,
  'intake-2': intake,
  'exhaust-1': exhaust,
  'exhaust-2': exhaust,
})
const mate = (intake: number, exhaust: number) => ({ tag: 'T-0402', corners: corners(intake, exhaust) })

describe('a pair is cut to one thickness', () => {
  it('within the limit nothing is said, at the limit neither', () => {
    // 4.484 − 4.482 = 0.002.
    expect(mateDiffers(corners(4.482, 4.42), mate(4.484, 4.418), 0.002)).toEqual([])
  })

  it('past it, which edge, by how much and which way', () => {
    // 4.485 − 4.482 = 0.003 thicker; 4.410 − 4.420 = 0.010 thinner.
    expect(mateDiffers(corners(4.482, 4.42), mate(4.485, 4.41), 0.002).map(finishedCautionText)).toEqual([
      'T-0402, its mate, is 0.0030 in thicker at the intake edge (the pair may differ by 0.0020 in)',
      'T-0402, its mate, is 0.0100 in thinner at the exhaust edge (the pair may differ by 0.0020 in)',
    ])
  })

  it('an edge is the mean of its corners, and what was not measured is not held against anything', () => {
    expect(edgeThicknessIn({ 'intake-1': 4.48, 'intake-2': 4.482 }, 'intake')).toBeCloseTo(4.481, 12)
    expect(edgeThicknessIn({ 'intake-1': 4.48 }, 'intake')).toBe(4.48)
    expect(edgeThicknessIn({}, 'exhaust')).toBeNull()
    expect(mateDiffers({}, mate(4.485, 4.41), 0.002)).toEqual([])
  })
})

describe('a finish that was asked for as a figure', () => {
  it.each([
    ['30 µin or better, steel gasket', 30],
    ['Ra 20', 20],
    ['20 Ra', 20],
    ['max. 32 uin', 32],
    // 0.8 µm: 25.4 µm are 1000 µin, so 0.8/25.4·1000 = 31.496.
    ['Ra 0.8 µm', 31.496],
  ])('“%s” is %d µin', (asked, microIn) => {
    expect(finishAskedMicroIn(asked)).toBeCloseTo(microIn, 3)
  })

  it.each(['', 'as the gasket maker says', 'smooth, 2 passes'])('“%s” is no figure', (asked) => {
    expect(finishAskedMicroIn(asked)).toBeNull()
    expect(roughFinish(400, asked)).toEqual([])
  })

  it('is told when what was measured is rougher, and not at the limit', () => {
    expect(roughFinish(30, '30 µin or better')).toEqual([])
    expect(roughFinish(42, '30 µin or better').map(finishedCautionText)).toEqual([
      'The finish is 42 µin, rougher than asked (30 µin or better)',
    ])
  })
})
