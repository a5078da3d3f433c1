import { describe, expect, it } from 'vitest'
import { openingOutline, type OpeningDrawing } from '@/lib/drawing/opening-outline'

/** A rectangle 3 in across from x = 2, 2 in along from y = 1, on a deck of 7 in: 6 in², centre 3.5. */
const opening: OpeningDrawing = {
  points: [
    { xIn: 2, yIn: 1 },
    { xIn: 5, yIn: 1 },
    { xIn: 5, yIn: 3 },
    { xIn: 2, yIn: 3 },
  ],
  areaIn2: 6,
  centreIn: 3.5,
  milledWidthIn: 7,
  deepEdge: 'exhaust',
}

/** The corners of the one closed path of straight lines with four of them that is filled: the opening. */
function cornersOf(deepEdge: OpeningDrawing['deepEdge']) {
  const { marks } = openingOutline({ ...opening, deepEdge })
  const path = marks.find((mark) => mark.kind === 'path' && mark.fill === 'ground')
  const numbers = (path?.kind === 'path' ? (path.d.match(/-?[\d.]+/g) ?? []) : []).map(Number)
  return Array.from({ length: numbers.length / 2 }, (_, i) => [numbers[2 * i] ?? NaN, numbers[2 * i + 1] ?? NaN])
}
const heightOf = (deepEdge: OpeningDrawing['deepEdge'], words: string) => {
  const mark = openingOutline({ ...opening, deepEdge }).marks.find(
    (one) => one.kind === 'text' && one.text.startsWith(words),
  )
  return mark?.kind === 'text' ? mark.y : NaN
}

describe('an opening on the deck', () => {
  it('is half size both ways: 3 in are 38.1 mm across, 2 in are 25.4 mm along', () => {
    const corners = cornersOf('exhaust')
    const span = (axis: 0 | 1) => {
      const places = corners.map((corner) => corner[axis] ?? NaN)
      return Math.max(...places) - Math.min(...places)
    }
    expect(span(0)).toBeCloseTo(25.4, 2)
    expect(span(1)).toBeCloseTo(38.1, 2)
  })

  it.each(['exhaust', 'intake'] as const)('has the intake edge at the foot when the %s edge is deep', (deep) => {
    const [first, second] = cornersOf(deep)
    // The second corner lies further from the shallow edge: up the page from the intake edge, down it from the other.
    expect((second?.[1] ?? NaN) < (first?.[1] ?? NaN)).toBe(deep === 'exhaust')
    expect(heightOf(deep, 'shallow') > heightOf(deep, 'deep')).toBe(deep === 'exhaust')
  })

  it('keeps inside its page, and says in words what it shows', () => {
    const drawing = openingOutline(opening)
    for (const mark of drawing.marks) {
      if (mark.kind !== 'text') continue
      expect(mark.x).toBeGreaterThan(0)
      expect(mark.y).toBeGreaterThan(0)
      expect(mark.x).toBeLessThan(drawing.widthMm)
      expect(mark.y).toBeLessThan(drawing.heightMm)
    }
    expect(drawing.description).toBe(
      '4 traced points, from 2.000 in to 5.000 in off the shallow edge, from 1.000 in to 3.000 in off end 1. Area 6.0000 in², centre 3.500 in off the shallow edge.',
    )
  })
})
