import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { crossingEdges, outlinePerimeterIn, type OutlinePoint } from '../../../lib/core/cut/outline'
import { parseOutline, tracedOpening } from '../../../lib/core/cut/outline-text'
import { must } from '../../../lib/core/errors'

const W = 7
const point = (typed: string) => must(parseOutline(typed))[0]

describe('two figures a line', () => {
  it.each<[string, number, number]>([
    ['1.5 2.25', 1.5, 2.25],
    ['  1.5\t2.25  ', 1.5, 2.25],
    ['1.5\t\t2.25', 1.5, 2.25],
    ['1.5,2.25', 1.5, 2.25],
    ['1.5, 2.25', 1.5, 2.25],
    ['1.5;2.25', 1.5, 2.25],
    ['1.5 ; 2.25', 1.5, 2.25],
    ['1,5 2,25', 1.5, 2.25],
    ['1,5\t2,25', 1.5, 2.25],
    ['1,5; 2,25', 1.5, 2.25],
    ['1,5, 2,25', 1.5, 2.25],
    ['1,5 2', 1.5, 2],
    ['2 1,5', 2, 1.5],
    ['1,2', 1, 2],
    ['.5 -.25', 0.5, -0.25],
    ['1 1/2 3/4', 1.5, 0.75],
    ['1-1/2 2', 1.5, 2],
    // By hand: 38.1 / 25.4 = 1.5, 57.15 / 25.4 = 2.25.
    ['38.1 mm 57.15 mm', 1.5, 2.25],
    ['38,1mm;57,15mm', 1.5, 2.25],
    ['1500 thou 2250 thou', 1.5, 2.25],
  ])('%j', (typed, xIn, yIn) => {
    const read = point(typed)
    expect(read?.xIn).toBeCloseTo(xIn, 12)
    expect(read?.yIn).toBeCloseTo(yIn, 12)
  })

  it('any two figures, parted in any way that a spreadsheet parts them', () => {
    const figure = fc.integer({ min: -19_999, max: 19_999 }).map((thou) => (thou / 1000).toFixed(3))
    const parted = fc.constantFrom(' ', '  ', '\t', ';', '; ', ',', ', ')
    fc.assert(
      fc.property(figure, figure, parted, fc.boolean(), (x, y, between, comma) => {
        const written = (text: string) => (comma && !between.includes(',') ? text.replace('.', ',') : text)
        expect(point(`${written(x)}${between}${written(y)}`)).toEqual({ xIn: Number(x), yIn: Number(y) })
      }),
    )
  })

  it('empty lines do not count, whatever ends a line; a point that closes the outline is left out', () => {
    const typed = '\n2 0\r\n5 0\r\n\r\n5 3\r2 3\n2.000 0\n'
    expect(must(parseOutline(typed))).toEqual([
      { xIn: 2, yIn: 0 },
      { xIn: 5, yIn: 0 },
      { xIn: 5, yIn: 3 },
      { xIn: 2, yIn: 3 },
    ])
    expect(must(parseOutline(' \n\t\n'))).toEqual([])
  })

  it.each<[string, string, RegExp]>([
    ['x y\n2 0', 'unreadable', /^Line 1: “x y” is not two figures/],
    ['2 0\n\n5', 'unreadable', /^Line 3: “5” is not two figures/],
    ['2 0\n5 0 1', 'unreadable', /^Line 2: “5 0 1” is not two figures/],
    ['2 0\n1,5, 2, 5', 'unreadable', /^Line 2/],
    ['2 0\n5;', 'unreadable', /^Line 2/],
    ['2 0\n1,5 1/2', 'ambiguous', /^Line 2: “1,5 1\/2” can be read in two ways/],
    ['2 0\n1 ,5', 'ambiguous', /^Line 2: .* two ways/],
    ['2 0\n38.1, 20', 'ambiguous', /^Line 2: .*38\.1 mm/],
    ['2 0\n2, 1600 mm', 'out-of-range', /^Line 2: 1600 mm is not possible/],
    ['2 30 mm', 'ambiguous', /^Line 1: in before and mm here/],
    ['50 mm 0 mm\n2 0', 'ambiguous', /^Line 2: mm before and in here/],
  ])('%j is refused, and its line is named', (typed, code, message) => {
    const read = parseOutline(typed)
    expect(read).toMatchObject({ ok: false, refusal: { code, message: expect.stringMatching(message) } })
  })
})

it('no more than 500 points', () => {
  const lines = (n: number) => Array.from({ length: n }, (_, at) => `3 ${at / 100}`).join('\n')
  expect(must(parseOutline(lines(500)))).toHaveLength(500)
  expect(parseOutline(lines(501))).toMatchObject({
    refusal: { code: 'out-of-range', message: expect.stringContaining('501') },
  })
})

/** n points on a circle, as a digitiser writes them: to a ten-thousandth. */
const circle = (n: number, radius: number, x: number, y: number): string =>
  Array.from({ length: n }, (_, at) => {
    const turn = (2 * Math.PI * at) / n
    return `${(x + radius * Math.cos(turn)).toFixed(4)} ${(y + radius * Math.sin(turn)).toFixed(4)}`
  }).join('\n')

describe('the opening of a traced outline', () => {
  it('a square, by hand', () => {
    const { areaIn2, centreIn, perimeterIn } = must(tracedOpening('2 0\n5 0\n5 3\n2 3', W))
    expect([areaIn2, centreIn, perimeterIn]).toEqual([9, 3.5, 12])
  })

  it('a 3-4-5 triangle, by hand', () => {
    const { areaIn2, centreIn, perimeterIn } = must(tracedOpening('1;0\n5;0\n1;3', W))
    expect(areaIn2).toBeCloseTo(6, 12)
    expect(centreIn).toBeCloseTo(1 + 4 / 3, 12)
    expect(perimeterIn).toBeCloseTo(3 + 4 + 5, 12)
  })

  it('any circle: short of π r² and 2 π r by what a polygon in it is short', () => {
    const any = fc.record({
      n: fc.integer({ min: 12, max: 120 }),
      radius: fc.double({ min: 0.8, max: 2.2, noNaN: true }),
      x: fc.double({ min: 2.3, max: 4.7, noNaN: true }),
      y: fc.double({ min: -10, max: 10, noNaN: true }),
    })
    fc.assert(
      fc.property(any, ({ n, radius, x, y }) => {
        const traced = must(tracedOpening(circle(n, radius, x, y), W))
        // A regular polygon of n corners on the circle is n triangles of r² sin(2π/n)/2 with outer sides 2 r sin(π/n).
        const short = (n / (2 * Math.PI)) * Math.sin((2 * Math.PI) / n)
        const shortRound = (n / Math.PI) * Math.sin(Math.PI / n)
        // Corners to half a ten-thousandth each way: no more than that along the whole way round.
        const off = 2 * Math.PI * radius * 0.0001
        expect(Math.abs(traced.areaIn2 - Math.PI * radius ** 2 * short)).toBeLessThan(off)
        expect(Math.abs(traced.perimeterIn - 2 * Math.PI * radius * shortRound)).toBeLessThan(n * 0.0001)
        expect(Math.abs(traced.centreIn - x)).toBeLessThan(0.0002)
      }),
      { numRuns: 60 },
    )
  })

  it('never longer round a convex outline than round the rectangle about it, nor shorter than its circle', () => {
    const corners = fc.array(fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }), {
      minLength: 4,
      maxLength: 20,
    })
    fc.assert(
      fc.property(corners, (turns) => {
        const points = turns
          .toSorted((a, b) => a - b)
          .map((turn) => ({ xIn: 3 + 2 * Math.cos(turn), yIn: 2 * Math.sin(turn) }))
        const side = (of: (p: OutlinePoint) => number) => Math.max(...points.map(of)) - Math.min(...points.map(of))
        const perimeter = outlinePerimeterIn(points)
        expect(perimeter).toBeLessThanOrEqual(2 * (side((p) => p.xIn) + side((p) => p.yIn)) + 1e-9)
        expect(perimeter).toBeLessThanOrEqual(2 * Math.PI * 2 + 1e-9)
      }),
    )
  })

  it.each<[string, string, string, RegExp]>([
    ['two points', '2 0\n5 0', 'missing', /three points or more/],
    ['nothing', '', 'missing', /three points or more/],
    ['a bow tie', '2 0\n5 3\n5 0\n2 3', 'contradiction', /from line 1 to 2, and from line 3 to 4/],
    ['a bow tie over empty lines', '2 0\n\n5 3\n5 0\n\n2 3', 'contradiction', /from line 1 to 3, and from line 4 to 6/],
    ['a point twice', '2 0\n5 0\n5 0\n5 3', 'contradiction', /from line 1 to 2, and from line 2 to 3/],
    ['a last edge over the first', '2 0\n5 0\n5 3\n3 0', 'contradiction', /from line 1 to 2/],
    ['a point off the deep edge', '5 0\n7 0\n7.1 3\n5 3', 'out-of-range', /^Line 3: .*0 to 7 in/],
    ['a point off the shallow edge', '-0.1 0\n3 0\n3 3', 'out-of-range', /^Line 1: /],
    ['an opening of no chamber', '2 0\n2.2 0\n2.2 0.2', 'out-of-range', /opening area/],
    ['words', '2 0\n5 0\nfive 3', 'unreadable', /^Line 3/],
  ])('%s is refused, and says where', (_, typed, code, message) => {
    expect(tracedOpening(typed, W)).toMatchObject({
      ok: false,
      refusal: { code, message: expect.stringMatching(message) },
    })
  })

  it('needs the width it is laid across', () => {
    expect(tracedOpening('2 0\n5 0\n5 3', undefined)).toMatchObject({
      refusal: { code: 'missing', needs: ['milledWidthIn'] },
    })
  })
})

describe('where an outline meets itself', () => {
  it('nowhere, round any corners in the order of their angle', () => {
    const star = fc.array(fc.double({ min: 0.5, max: 2, noNaN: true }), { minLength: 3, maxLength: 30 })
    fc.assert(
      fc.property(star, (radii) => {
        const points = radii.map((radius, i) => {
          const turn = (2 * Math.PI * i) / radii.length
          return { xIn: radius * Math.cos(turn), yIn: radius * Math.sin(turn) }
        })
        expect(crossingEdges(points)).toBeNull()
      }),
    )
  })

  it('somewhere, once two corners of a convex one have changed places', () => {
    const swapped = fc.tuple(fc.integer({ min: 5, max: 30 }), fc.nat()).map(([n, pick]) => {
      const turns = Array.from({ length: n }, (_, i) => (2 * Math.PI * i) / n)
      const [at, after] = [pick % n, (pick + 1) % n]
      const order = turns.with(at, turns[after] ?? 0).with(after, turns[at] ?? 0)
      return order.map((turn) => ({ xIn: Math.cos(turn), yIn: Math.sin(turn) }))
    })
    fc.assert(
      fc.property(swapped, (points) => {
        expect(crossingEdges(points)).not.toBeNull()
      }),
    )
  })
})
