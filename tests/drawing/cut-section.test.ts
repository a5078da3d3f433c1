import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { castingFigureKeys, type CastingFacts } from '@/lib/core/casting/figures'
import { cutSection, sectionGeometry, type CutSectionInput } from '@/lib/drawing/cut-section'
import { hatchInside } from '@/lib/drawing/cut-section-hatch'
import { apart } from '@/lib/drawing/cut-section-strip'
import type { Drawing, PathMark, Point } from '@/lib/drawing/marks'

/** Invented: a wedge chamber, both valves at 22°, opening toward the deep edge. */
const wedge: CastingFacts = {
  milledWidthIn: 6,
  openingAreaIn2: 10.1706,
  openingCentreIn: 3.81,
  nominalCc: 64,
  intakeFaceDeg: 10,
  intakeValveIn: 2.055,
  intakeValveAngleDeg: 22,
  intakeValveXIn: 3.05,
  intakeValveZIn: 0.52,
  intakeSealingIn: 2.045,
  intakeTopCutIn: 2.115,
  intakeTopCutOffsetIn: 0.02,
  intakeInsertIn: 2.155,
  intakeInsertOffsetIn: 0.03,
  intakeSeatDepthIn: 0.105,
  exhaustValveIn: 1.6,
  exhaustValveAngleDeg: 22,
  exhaustValveXIn: 3.3,
  exhaustValveZIn: 0.47,
  exhaustSealingIn: 1.59,
  exhaustTopCutIn: 1.66,
  exhaustTopCutOffsetIn: 0.02,
  exhaustInsertIn: 1.7,
  exhaustInsertOffsetIn: 0.03,
  exhaustSeatDepthIn: 0.14,
}

/** Invented: valves leaning apart, no seat gauged. */
const apartValves: CastingFacts = {
  milledWidthIn: 5.5,
  openingAreaIn2: 6.35,
  openingCentreIn: 2.8,
  intakeValveIn: 1.575,
  intakeValveAngleDeg: 16,
  intakeValveXIn: 2.02,
  intakeValveZIn: 0.38,
  exhaustValveIn: 1.3,
  exhaustValveAngleDeg: -17,
  exhaustValveXIn: 3.58,
  exhaustValveZIn: 0.345,
}

const cuts = {
  none: { flatIn: 0, angleIn: 0, angleDeg: null },
  flat: { flatIn: 0.018, angleIn: 0, angleDeg: null },
  both: { flatIn: 0.02, angleIn: 0.063, angleDeg: null },
  steep: { flatIn: 0, angleIn: 6 * Math.tan(Math.PI / 180), angleDeg: 1 },
} as const

const input = (more: Partial<CutSectionInput> = {}): CutSectionInput => ({
  casting: wedge,
  chamberShape: 'open',
  deepEdge: 'exhaust',
  cut: cuts.both,
  ...more,
})

const numbers = (d: string) => (d.match(/-?[\d.]+/g) ?? []).map(Number)

function pointsOf(d: string): Point[] {
  const list = numbers(d)
  return Array.from({ length: list.length / 2 }, (_, i): Point => [list[2 * i] ?? NaN, list[2 * i + 1] ?? NaN])
}

const paths = ({ marks }: Drawing): PathMark[] => marks.flatMap((mark) => (mark.kind === 'path' ? [mark] : []))
const texts = ({ marks }: Drawing) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : []))
const words = (drawing: Drawing) => texts(drawing).map((mark) => mark.text)

/** Old decks are the dashes of 1.6 and 1: first the section's, then the strip's. */
function oldDecks(drawing: Drawing): [section: [Point, Point], strip: [Point, Point]] {
  const found = paths(drawing).filter(({ stroke }) => stroke?.dashMm?.[0] === 1.6 && stroke.dashMm[1] === 1)
  expect(found).toHaveLength(2)
  return found.map(({ d }) => pointsOf(d)) as [[Point, Point], [Point, Point]]
}

/** Millimetres an inch, and a place of the head on the sheet, from what is drawn: the ends of the old deck. */
function sheetOf(drawing: Drawing, widthIn: number, deepEdge: 'intake' | 'exhaust' = 'exhaust') {
  const [[left, right]] = oldDecks(drawing)
  const mmPerIn = (right[0] - left[0]) / widthIn
  const place = (xIn: number, zIn: number): Point => [
    deepEdge === 'exhaust' ? left[0] + xIn * mmPerIn : right[0] - xIn * mmPerIn,
    left[1] - zIn * mmPerIn,
  ]
  return { mmPerIn, place }
}

const rad = (deg: number) => (deg * Math.PI) / 180

describe('the section lies to scale', () => {
  it.each([
    ['wide', false],
    ['narrow', true],
  ])('the new deck stands its depth above the old one at both edges, %s', (_, narrow) => {
    const drawing = cutSection(input({ narrow }))
    const { place } = sheetOf(drawing, 6)
    // The wedge: intake and exhaust end of the new deck, then of the old one.
    const taken = paths(drawing).find(({ fill, stroke }) => fill === 'ink' && stroke === null)
    const corners = pointsOf(taken?.d ?? '')
    const expected = [place(0, 0.02), place(6, 0.083), place(6, 0), place(0, 0)]
    expect(corners).toHaveLength(4)
    corners.forEach(([x, y], at) => {
      expect(Math.abs(x - (expected[at]?.[0] ?? NaN))).toBeLessThan(0.1)
      expect(Math.abs(y - (expected[at]?.[1] ?? NaN))).toBeLessThan(0.02)
    })
  })

  it('draws each sealing line where the depth gauge says that it is', () => {
    const drawing = cutSection(input())
    const { place } = sheetOf(drawing, 6)
    // By hand, sin 22° = 0.374607, cos 22° = 0.927184. Top cut's centre: 0.105 + 1.0575 × 0.374607 = 0.501147 up; the
    // sealing circle's, 0.020 back along the axis: 0.501147 + 0.018544 = 0.519690, at x = 3.05.
    // Its rim: ±1.0225 × (0.927184, 0.374607) = ±(0.948046, 0.383036).
    const intake: Point[] = [place(2.101954, 0.136655), place(3.998046, 0.902726)]
    // Exhaust: 0.14 + 0.83 × 0.374607 + 0.018544 = 0.469467; rim ±0.795 × … = ±(0.737111, 0.297813).
    const exhaust: Point[] = [place(2.562889, 0.171655), place(4.037111, 0.76728)]
    const heavy = paths(drawing)
      .filter(({ d, stroke }) => stroke?.widthMm === 0.5 && /^(M[^LMC]+L[^LMC]+){2}$/.test(d))
      .map(({ d }) => pointsOf(d))
      .map(([a, b, c, e]) => [middle(a, b), middle(c, e)])
    for (const wanted of [intake, exhaust])
      expect(heavy.some((found) => wanted.every((point, at) => distance(point, found[at]) < 0.1))).toBe(true)
  })

  it('finds the nearest point and its height over the new deck, by trigonometry', () => {
    const [valve] = sectionGeometry(input()).valves
    // Insert edge: centre 0.010 on from the top cut's: (3.05 + 0.030 × 0.374607, 0.501147 − 0.010 × 0.927184)
    // = (3.061238, 0.491875); nearest rim 1.0775 × (0.927184, 0.374607) down: (2.062197, 0.088236).
    // φ = atan(0.063/6) = 0.6015694°: (0.088236 − 0.020) × cos φ − 2.062197 × sin φ = 0.068232 − 0.021652 = 0.046580.
    expect(valve?.nearest.name).toBe('insert')
    expect(valve?.nearest.nearest.xIn).toBeCloseTo(2.062197, 5)
    expect(valve?.nearest.nearest.zIn).toBeCloseTo(0.088236, 5)
    expect(valve?.nearest.overDeckIn).toBeCloseTo(0.04658, 5)
  })

  it('finds them for a canted valve too: against every point of the rim in space', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -40, max: 40, noNaN: true }),
        fc.double({ min: -30, max: 30, noNaN: true }),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        (angleDeg, cantDeg, angleIn) => {
          const casting: CastingFacts = {
            milledWidthIn: 7,
            intakeValveIn: 1.8,
            intakeValveAngleDeg: angleDeg,
            intakeValveCantDeg: cantDeg,
            intakeValveXIn: 3.5,
            intakeValveZIn: 1,
          }
          const cut = { flatIn: 0.01, angleIn, angleDeg: null }
          const [valve] = sectionGeometry(input({ casting, cut })).valves
          const lowest = lowestOfRim({ angleDeg, cantDeg, radius: 0.9, x: 3.5, z: 1 }, 0.01, angleIn / 7)
          expect(valve?.nearest.overDeckIn).toBeCloseTo(lowest.height, 4)
          // The drawn point itself is that high.
          const { xIn = NaN, zIn = NaN } = valve?.nearest.nearest ?? {}
          expect(overLine(xIn, zIn, 0.01, angleIn / 7)).toBeCloseTo(lowest.height, 4)
        },
      ),
      { numRuns: 60 },
    )
  })

  it('opens the chamber as wide as the circle of its area, or as the outline', () => {
    // 10.1706 in² is a circle of √(10.1706/π) = 1.79926 in radius.
    const { opening } = sectionGeometry(input())
    expect(opening?.fromIn).toBeCloseTo(2.01074, 4)
    expect(opening?.toIn).toBeCloseTo(5.60926, 4)
    const outline = [
      { xIn: 1.9, yIn: 0 },
      { xIn: 5.4, yIn: 1 },
      { xIn: 4, yIn: 3 },
    ]
    expect(sectionGeometry(input({ outline })).wallsIn).toEqual([1.9, 5.4])
  })

  it('draws the chamber wide enough for its seats, and says so', () => {
    const drawing = cutSection(input({ casting: apartValves }))
    const { wallsIn, valves } = sectionGeometry(input({ casting: apartValves }))
    const rims = valves.flatMap(({ circles }) => circles.flatMap(({ ends }) => ends.map((end) => end.xIn)))
    expect(Math.min(...rims)).toBeGreaterThan(wallsIn?.[0] ?? NaN)
    expect(Math.max(...rims)).toBeLessThan(wallsIn?.[1] ?? NaN)
    expect(drawing.description).toContain('The seats reach past it')
    expect(cutSection(input()).description).not.toContain('The seats reach past it')
  })
})

const middle = (a?: Point, b?: Point): Point => [
  ((a?.[0] ?? NaN) + (b?.[0] ?? NaN)) / 2,
  ((a?.[1] ?? NaN) + (b?.[1] ?? NaN)) / 2,
]
const distance = (a?: Point, b?: Point) =>
  Math.hypot((a?.[0] ?? NaN) - (b?.[0] ?? NaN), (a?.[1] ?? NaN) - (b?.[1] ?? NaN))

/** Distance of a point from the line z = f + s·x, by the line's own formula. */
const overLine = (x: number, z: number, f: number, s: number) => (z - f - s * x) / Math.hypot(1, s)

type Rim = { angleDeg: number; cantDeg: number; radius: number; x: number; z: number }

/** Walks round the rim in space. */
function lowestOfRim({ angleDeg, cantDeg, radius, x, z }: Rim, f: number, s: number) {
  const axis = [Math.tan(rad(angleDeg)), Math.tan(rad(cantDeg)), -1] as const
  const length = Math.hypot(...axis)
  const [ax, ay, az] = axis.map((part) => part / length) as [number, number, number]
  // Two directions square to the axis: one in the section, and their cross product.
  const flat = Math.hypot(ax, az)
  const [ux, uz] = [-az / flat, ax / flat]
  const [vx, vz] = [ay * uz, -ay * ux]
  let height = Infinity
  for (let turn = 0; turn < 2 * Math.PI; turn += Math.PI / 3600) {
    const [c, n] = [radius * Math.cos(turn), radius * Math.sin(turn)]
    height = Math.min(height, overLine(x + c * ux + n * vx, z + c * uz + n * vz, f, s))
  }
  return { height }
}

describe('edges', () => {
  it('the intake edge is on the left and the exhaust edge on the right, whichever is deep', () => {
    for (const deepEdge of ['exhaust', 'intake'] as const) {
      const found = texts(cutSection(input({ deepEdge })))
      const at = (wanted: string) => found.find((mark) => mark.text === wanted)?.x ?? NaN
      expect(at('intake edge')).toBeLessThan(at('exhaust edge'))
      expect(at('deep edge')).toBe(at(`${deepEdge} edge`))
      expect(at('83 thou')).toBe(at(`${deepEdge} edge`))
      expect(at('20 thou')).not.toBe(at(`${deepEdge} edge`))
    }
  })

  it('deep at the intake edge is the mirror image', () => {
    const casting = { ...wedge, intakeFaceDeg: 0 }
    const [right, left] = (['exhaust', 'intake'] as const).map((deepEdge) =>
      cutSection(input({ casting, deepEdge })),
    ) as [Drawing, Drawing]
    expect(left.marks).toHaveLength(right.marks.length)
    const sheet = { right: sheetOf(right, 6), left: sheetOf(left, 6, 'intake') }
    expect(sheet.left.place(2, 0.5)[0]).toBeCloseTo(180 - sheet.right.place(2, 0.5)[0], 6)
    // Hatching and words do not mirror; the solid valve does, point by point.
    const valve = (drawing: Drawing) => pointsOf(paths(drawing).find(({ fill }) => fill === 'faint')?.d ?? '')
    const [here, there] = [valve(right), valve(left)]
    expect(here.length).toBeGreaterThan(10)
    here.forEach(([x, y], at) => {
      expect(there[at]?.[0]).toBeCloseTo(180 - x, 1)
      expect(there[at]?.[1]).toBeCloseTo(y, 6)
    })
  })

  it('a flat cut has no deep edge', () => {
    expect(words(cutSection(input({ cut: cuts.flat })))).not.toContain('deep edge')
  })

  it('says the cut, both depths and the nearest circle', () => {
    expect(cutSection(input()).description).toContain(
      'Angle and flat cut, 0.60°: 20 thou at the intake edge, 83 thou at the exhaust edge, which is the deep edge. ' +
        'Milled width 6.000 in. Nearest to the new deck: intake insert edge, 46.6 thou clear.',
    )
    expect(cutSection(input({ cut: cuts.flat })).description).toContain('Flat cut, 18 thou at both edges.')
    expect(cutSection(input({ cut: cuts.none })).description).toContain('No cut.')
  })
})

describe('the deck drawn with larger depths', () => {
  const stated = (drawing: Drawing) => Number(/depths drawn × (\d+)/.exec(words(drawing).join('|'))?.[1] ?? NaN)

  it.each([
    ['flat', cuts.flat, 0.018],
    ['both', cuts.both, 0.083],
    ['steep', cuts.steep, 0.104731],
    ['half a thou', { flatIn: 0.0005, angleIn: 0, angleDeg: null }, 0.0005],
    ['deepest', { flatIn: 0.5, angleIn: 0, angleDeg: null }, 0.5],
  ] as const)('%s: by the factor that stands beside it, and not beyond 12 mm', (_, cut, deepIn) => {
    const drawing = cutSection(input({ cut }))
    const factor = stated(drawing)
    const { mmPerIn } = sheetOf(drawing, 6)
    const [, [, foot]] = oldDecks(drawing)
    const rise = deepIn * mmPerIn * factor
    expect(rise).toBeLessThanOrEqual(12.5)
    // The heavy stretches of its new deck: the last one ends at the deep edge.
    const heavy = paths(drawing).filter(({ stroke }) => stroke?.widthMm === 0.7)
    const end = pointsOf(heavy[0]?.d ?? '').at(-1)
    expect(end?.[0]).toBeCloseTo(foot[0], 1)
    expect(foot[1] - (end?.[1] ?? NaN)).toBeCloseTo(rise, 1)
  })

  it('does not speak of a factor where nothing is cut', () => {
    const drawing = cutSection(input({ cut: cuts.none }))
    expect(stated(drawing)).toBeNaN()
    expect(words(drawing)).toContain('The deck alone: no cut')
  })

  it('the drawing is as high for one cut as for another', () => {
    const heights = Object.values(cuts).map((cut) => cutSection(input({ cut })).heightMm)
    expect(new Set(heights).size).toBe(1)
  })
})

describe('what the cut takes of a seat', () => {
  const flat = (flatIn: number) => input({ cut: { flatIn, angleIn: 0, angleDeg: null } })
  const red = (drawing: Drawing) => JSON.stringify(drawing.marks).includes('"stop"')

  // The intake seat from the deck: insert edge 0.0882, top cut 0.105 as gauged, sealing line 0.1367 (worked above).
  it.each([
    [0.08, 'nearest: intake insert edge, 8.2 thou clear', false],
    [0.1, 'intake insert edge, 11.8 thou cut away', false],
    [0.12, 'intake top cut, 15 thou cut away', false],
    [0.14, 'hold: intake sealing line, 3.3 thou cut away', true],
  ])('%d in flat: %s', (flatIn, said, stops) => {
    const drawing = cutSection(flat(flatIn))
    expect(words(drawing)).toContain(said)
    expect(red(drawing)).toBe(stops)
  })

  it('is ringed in the section, where it is', () => {
    const drawing = cutSection(flat(0.12))
    const { place } = sheetOf(drawing, 6)
    // Top cut: centre (3.057492, 0.501147), rim 1.0575 × (0.927184, 0.374607) down.
    const wanted = place(3.057492 - 0.980497, 0.105)
    const rings = paths(drawing).filter(({ fill, stroke }) => fill === null && stroke?.widthMm === 0.6)
    expect(rings).toHaveLength(1)
    const xs = pointsOf(rings[0]?.d ?? '')
    const centre: Point = [
      (Math.min(...xs.map(([x]) => x)) + Math.max(...xs.map(([x]) => x))) / 2,
      (Math.min(...xs.map(([, y]) => y)) + Math.max(...xs.map(([, y]) => y))) / 2,
    ]
    expect(distance(centre, wanted)).toBeLessThan(0.1)
  })
})

describe('what is not known', () => {
  it('a usual width is never given as the head’s', () => {
    const drawing = cutSection(input({ casting: {} }))
    expect(words(drawing)).toContain('drawn to a usual width; the record has none')
    expect(words(drawing).join('|')).not.toMatch(/milled width|°|6\.000/)
    expect(words(drawing)).toContain('83 thou')
    expect(drawing.description).toContain("Not in the record: the chamber's opening; where the valves sit.")
    const given = cutSection(input({ casting: {}, cut: { ...cuts.both, angleDeg: 0.6 } }))
    expect(words(given)).toContain('0.60°')
  })

  it('leaves out a valve whose place is not in the head', () => {
    for (const more of [{ intakeValveXIn: 0.1 }, { intakeValveXIn: undefined }, { intakeValveAngleDeg: 80 }]) {
      const casting = { ...wedge, ...more } as CastingFacts
      expect(words(cutSection(input({ casting })))).not.toContain('intake valve')
      expect(words(cutSection(input({ casting })))).toContain('exhaust valve')
    }
  })

  it('places a seat without a gauge reading from its valve, and says that the depth is missing', () => {
    const { intakeSeatDepthIn: _, ...casting } = wedge
    const [valve] = sectionGeometry(input({ casting })).valves
    const sealing = valve?.circles.find(({ name }) => name === 'sealing')
    // 0.520 − 1.0225 × sin 22°
    expect(sealing?.nearest.zIn).toBeCloseTo(0.136964, 5)
    expect(cutSection(input({ casting })).description).toContain('Not in the record: the depth of the intake seat.')
  })

  it('a cut that no mill makes is refused in words, and nothing is taken off', () => {
    for (const flatIn of [-0.01, 2, NaN, Infinity]) {
      const drawing = cutSection(input({ cut: { flatIn, angleIn: 0, angleDeg: null } }))
      expect(drawing.description).toContain('This cut cannot be drawn.')
      expect(words(drawing).join('|')).not.toMatch(/thou deep|depths drawn/)
    }
  })
})

describe('any record at all', () => {
  const figure = fc.oneof(
    fc.double({ min: -2, max: 8, noNaN: true }),
    fc.double({ min: -30, max: 70, noNaN: true }),
    fc.double({ noNaN: true, noDefaultInfinity: true }),
  )
  const near = fc
    .record(
      Object.fromEntries(
        Object.entries({ ...wedge, intakeValveCantDeg: 3, wallDraftDeg: 4, perimeterIn: 11 }).map(([key, value]) => [
          key,
          fc.double({ min: 0.6, max: 1.6, noNaN: true }).map((share) => share * value),
        ]),
      ),
      { requiredKeys: [] },
    )
    .map((facts): CastingFacts => facts)
  const wild = fc
    .record(Object.fromEntries(castingFigureKeys.map((key) => [key, figure])), { requiredKeys: [] })
    .map((facts): CastingFacts => facts)
  const question = fc.record({
    casting: fc.oneof(near, wild),
    chamberShape: fc.constantFrom('open' as const, 'closed' as const, 'flat-deck' as const),
    deepEdge: fc.constantFrom('intake' as const, 'exhaust' as const),
    cut: fc.record({
      flatIn: fc.oneof(fc.double({ min: 0, max: 0.3, noNaN: true }), figure),
      angleIn: fc.oneof(fc.double({ min: 0, max: 0.3, noNaN: true }), figure),
      angleDeg: fc.option(fc.double({ min: 0, max: 5, noNaN: true })),
    }),
    narrow: fc.boolean(),
  })

  it('gives figures everywhere, and nothing outside the sheet', () => {
    fc.assert(
      fc.property(question, (asked) => {
        const drawing = cutSection(asked)
        for (const { d } of paths(drawing)) {
          expect(d).not.toMatch(/NaN|Infinity|e/)
          // One expectation a path: thousands of points a drawing.
          const { widthMm, heightMm } = drawing
          const outside = pointsOf(d).filter(([x, y]) => !(x >= 0 && x <= widthMm && y >= 0 && y <= heightMm))
          expect(outside).toEqual([])
        }
        for (const { x, y, text, sizeMm, anchor } of texts(drawing)) {
          const width = text.length * sizeMm * 0.55
          const left = x - { start: 0, middle: width / 2, end: width }[anchor]
          expect(left, text).toBeGreaterThanOrEqual(0)
          expect(left + width, text).toBeLessThanOrEqual(drawing.widthMm)
          expect(y - sizeMm * 0.75, text).toBeGreaterThanOrEqual(0)
          expect(y + sizeMm * 0.25, text).toBeLessThanOrEqual(drawing.heightMm)
          expect(text).not.toMatch(/NaN|Infinity|undefined|null/)
        }
        expect(drawing.description).not.toMatch(/NaN|undefined|null/)
      }),
      { numRuns: 400 },
    )
  })

  it('on a telephone of 390 px, beside margins of 16 px, no word is smaller than 11 px', () => {
    const drawing = cutSection(input({ narrow: true }))
    for (const { sizeMm } of texts(drawing)) expect((sizeMm * (390 - 32)) / drawing.widthMm).toBeGreaterThanOrEqual(11)
  })

  it('never needs brass, and red only for a hold', () => {
    const marks = JSON.stringify(cutSection(input()).marks)
    expect(marks).not.toContain('brass')
    expect(marks).not.toContain('stop')
  })
})

describe('hatching inside a shape', () => {
  const notched: Point[] = [
    [10, 10],
    [40, 10],
    [40, 30],
    [28, 30],
    [25, 18],
    [22, 30],
    [10, 30],
  ]
  /** Ray casting, with a hair of tolerance from testing the middle of each stroke. */
  const inside = ([x, y]: Point) =>
    notched.reduce((is, [x1, y1], at) => {
      const [x2, y2] = notched[(at + 1) % notched.length] as Point
      return y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1) ? !is : is
    }, false)

  it.each([
    [false, -1],
    [true, 1],
  ])('falling %s: every stroke at 45°, inside, also in a shape with a notch', (falling, slope) => {
    const points = pointsOf(hatchInside(notched, 2, falling))
    expect(points.length).toBeGreaterThan(30)
    for (let i = 0; i < points.length; i += 2) {
      const [a, b] = [points[i] as Point, points[i + 1] as Point]
      expect(Math.abs(b[1] - a[1] - slope * (b[0] - a[0]))).toBeLessThan(0.03)
      for (const share of [0.05, 0.5, 0.95])
        if (distance(a, b) > 0.5)
          expect(inside([a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])])).toBe(true)
    }
  })

  it('covers the share of the shape that its spacing makes it cover', () => {
    const points = pointsOf(hatchInside(notched, 0.5))
    let drawn = 0
    for (let i = 0; i < points.length; i += 2) drawn += distance(points[i], points[i + 1])
    // Strokes 0.5 apart along an axis are 0.5/√2 apart square to themselves. Area: 30 × 20 − the notch, 6 × 12 / 2.
    expect((drawn * 0.5) / Math.SQRT2).toBeCloseTo(564, -1)
  })
})

describe('numbers under the strip', () => {
  it('stand apart, in order, none beyond the last place', () => {
    expect(apart([10, 50, 30], 5, 100)).toEqual([10, 50, 30])
    expect(apart([10, 11, 10.5], 5, 100)).toEqual([10, 20, 15])
    expect(apart([98, 99, 50], 5, 100)).toEqual([95, 100, 50])
  })
})
