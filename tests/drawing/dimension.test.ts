import { describe, expect, it } from 'vitest'
import { arrowhead, gapDimension, levelDimension, roughWidth } from '@/lib/drawing/dimension'
import type { Mark } from '@/lib/drawing/marks'

const numbers = (d: string) => (d.match(/-?[\d.]+/g) ?? []).map(Number)
const paths = (marks: readonly Mark[]) => marks.flatMap((mark) => (mark.kind === 'path' ? [mark.d] : []))

describe('dimension lines', () => {
  it('an arrowhead has its tip where it points to and lies toward where it comes from', () => {
    // A 3-4-5 direction: from (13, 24) to (10, 20); 2.5 mm back along it is (11.5, 22), and 2.5/6 either side of that.
    const [tipX, tipY, ax = NaN, ay = NaN, bx = NaN, by = NaN] = numbers(arrowhead([10, 20], [13, 24], 2.5))
    expect([tipX, tipY]).toEqual([10, 20])
    expect((ax + bx) / 2).toBeCloseTo(11.5, 1)
    expect((ay + by) / 2).toBeCloseTo(22, 1)
    expect(Math.hypot(ax - bx, ay - by)).toBeCloseTo(2.5 / 3, 1)
  })

  it('an arrowhead from its own tip has no direction, and is still drawn', () => {
    expect(arrowhead([1, 1], [1, 1])).not.toContain('NaN')
  })

  it('a level line leaves room for its figure and ends at both arrow tips', () => {
    const marks = levelDimension(10, 110, 50, '6.000 in', 3)
    const [line = '', heads = ''] = paths(marks)
    const [x1, , gapFrom = NaN, , gapTo = NaN, , x2] = numbers(line)
    expect([x1, x2]).toEqual([10, 110])
    expect(gapTo - gapFrom).toBeGreaterThan(roughWidth('6.000 in', 3) - 0.02)
    expect(numbers(heads).slice(0, 2)).toEqual([10, 50])
    expect(numbers(heads).slice(6, 8)).toEqual([110, 50])
  })

  it('the arrows of a small height stand outside it and point at its two lines', () => {
    const [lines = '', heads = ''] = paths(gapDimension(5, 40, 40.5, 8, 4))
    expect(numbers(heads).slice(0, 2)).toEqual([5, 40])
    expect(numbers(heads).slice(6, 8)).toEqual([5, 40.5])
    const ys = numbers(lines).filter((_, at) => at % 2 === 1)
    expect(Math.min(...ys)).toBe(36)
    expect(Math.max(...ys)).toBe(44.5)
  })
})
