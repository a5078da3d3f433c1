import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { circleOpening, circleOutline } from '../../../lib/core/cut/circle'
import { draftedVolume } from '../../../lib/core/cut/drafted-volume'
import { openingOfOutline, type OutlinePoint } from '../../../lib/core/cut/outline'
import { cutVolumeCc } from '../../../lib/core/cut/volume'
import { must } from '../../../lib/core/errors'
import { cutFromOutline, cutFromRound, cutFromSquare } from './solid'

const W = 7
const at = (...points: [number, number][]): OutlinePoint[] => points.map(([xIn, yIn]) => ({ xIn, yIn }))
const square = at([2, 0], [5, 0], [5, 3], [2, 3])

/** Any outline that does not cross itself: points at random distances round a middle, in order of their angle. */
const star = fc
  .tuple(
    fc.array(fc.double({ min: 0.8, max: 1.8, noNaN: true }), { minLength: 5, maxLength: 30 }),
    fc.double({ min: 2, max: 5, noNaN: true }),
    fc.double({ min: 0, max: 18, noNaN: true }),
  )
  .map(([radii, xIn, yIn]) =>
    radii.map((radius, i) => {
      const turn = (2 * Math.PI * i) / radii.length
      return { xIn: xIn + radius * Math.cos(turn), yIn: yIn + radius * Math.sin(turn) }
    }),
  )

describe('opening from a traced outline', () => {
  it('a square, a triangle and an L, by hand', () => {
    expect(must(openingOfOutline(square, W))).toEqual({ areaIn2: 9, centreIn: 3.5 })
    const triangle = must(openingOfOutline(at([1, 0], [4, 0], [1, 3]), W))
    expect(triangle.areaIn2).toBeCloseTo(4.5, 12)
    expect(triangle.centreIn).toBeCloseTo(2, 12) // a third of the way
    // Two squares of 2 × 2 and one more on top of the left: centres 1, 3 and 1 from x = 1.
    const corner = must(openingOfOutline(at([1, 0], [5, 0], [5, 2], [3, 2], [3, 4], [1, 4]), W))
    expect(corner.areaIn2).toBeCloseTo(12, 12)
    expect(corner.centreIn).toBeCloseTo(1 + 5 / 3, 12)
  })

  it('either way round, wherever along the head, the same', () => {
    fc.assert(
      fc.property(star, fc.double({ min: -20, max: 20, noNaN: true }), (outline, along) => {
        const one = must(openingOfOutline(outline, W))
        const other = must(openingOfOutline(outline.map(({ xIn, yIn }) => ({ xIn, yIn: yIn + along })).toReversed(), W))
        expect(other.areaIn2).toBeCloseTo(one.areaIn2, 9)
        expect(other.centreIn).toBeCloseTo(one.centreIn, 9)
      }),
    )
  })

  it('any outline: any cut takes what the solid loses', () => {
    const cuts = fc.record({
      flatIn: fc.double({ min: 0.001, max: 0.2, noNaN: true }),
      // None, or one that a mill can set: the solid takes a slope of a billionth of an inch for flat.
      angleIn: fc.oneof(fc.constant(0), fc.double({ min: 0.0001, max: 0.25, noNaN: true })),
    })
    fc.assert(
      fc.property(star, cuts, (outline, parts) => {
        const cut = { ...parts, milledWidthIn: W }
        const taken = must(cutVolumeCc(must(openingOfOutline(outline, W)), cut))
        expect(taken / cutFromOutline(cut, outline)).toBeCloseTo(1, 6)
      }),
      { numRuns: 60 },
    )
  })

  it.each<[string, OutlinePoint[], string]>([
    ['two points', at([2, 0], [5, 0]), 'missing'],
    ['a bow tie', at([2, 0], [5, 3], [5, 0], [2, 3]), 'contradiction'],
    ['an edge run back', at([2, 0], [5, 0], [3, 0], [3, 3]), 'contradiction'],
    ['a corner on another edge', at([2, 0], [5, 0], [5, 3], [3.5, 0], [2, 3]), 'contradiction'],
    ['a corner given twice', at([2, 0], [5, 0], [5, 0], [5, 3], [2, 3]), 'contradiction'],
    ['off the shallow edge', at([-0.1, 0], [3, 0], [3, 3]), 'out-of-range'],
    ['off the deep edge', at([5, 0], [7.1, 0], [7, 3]), 'out-of-range'],
    ['no number', at([2, NaN], [5, 0], [5, 3]), 'out-of-range'],
    ['along no head', at([2, 1e4], [5, 1e4], [5, 10_003]), 'out-of-range'],
    ['endless', at([2, 0], [5, Infinity], [5, 3]), 'out-of-range'],
    ['too small', at([2, 0], [2.5, 0], [2.5, 0.5]), 'out-of-range'],
    ['of no area', at([2, 0], [3, 0], [4, 0]), 'contradiction'],
  ])('%s is refused', (_, outline, code) => {
    expect(openingOfOutline(outline, W)).toMatchObject({ ok: false, refusal: { code } })
  })
})

describe('a round opening', () => {
  it.each([
    ['in the middle', 3.5, true],
    ['just inside the shallow edge', 1.8, true],
    ['over the shallow edge', 1.79, false],
    ['just inside the deep edge', 5.2, true],
    ['over the deep edge', 5.21, false],
  ])('of 3.600 in %s, at %d of 7 in', (_, centreIn, fits) => {
    expect(circleOpening(3.6, centreIn, W).ok).toBe(fits)
  })
})

describe('wall draft', () => {
  const disc = { areaIn2: (Math.PI / 4) * 3.6 ** 2, centreIn: 3.5 }
  const sixtyThou = { flatIn: 0.06, angleIn: 0, milledWidthIn: W }
  const cuts = [
    sixtyThou,
    { flatIn: 0.02, angleIn: 0.063, milledWidthIn: W },
    { flatIn: 0, angleIn: 0.122, milledWidthIn: W },
  ]

  it('10° all round takes 0.6 % off at 60 thou [derived]', () => {
    const drafted = must(draftedVolume(sixtyThou, circleOutline(disc), 10))
    expect(drafted.lessPart).toBeCloseTo(0.006, 3)
    expect(drafted.squareCc).toBeCloseTo(16.387064 * disc.areaIn2 * 0.06, 6)
  })

  it.each(cuts)('a cone and a pyramid lose what the solids lose: %j', (cut) => {
    for (const draftDeg of [-15, 0, 10, 30]) {
      const cone = must(draftedVolume(cut, circleOutline(disc), draftDeg)).cc
      expect(cone / cutFromRound(cut, { diameterIn: 3.6, centreIn: 3.5, draftDeg })).toBeCloseTo(1, 5)
      const pyramid = must(draftedVolume(cut, square, draftDeg)).cc
      expect(pyramid / cutFromSquare(cut, 3, 2, draftDeg)).toBeCloseTo(1, 6)
    }
  })

  it.each([1e-15, 1e-17, 1e-19, 5e-324])('an angle part of %d in is as good as none', (angleIn) => {
    const { cc } = must(draftedVolume({ flatIn: 0.001, angleIn, milledWidthIn: W }, square, 0))
    expect(cc).toBeCloseTo(16.387064 * 9 * 0.001, 9)
  })

  it('no draft is the plan’s own figure; more draft takes less', () => {
    const anyCut = fc.record({
      flatIn: fc.double({ min: 0.001, max: 0.1, noNaN: true }),
      angleIn: fc.double({ min: 0, max: 0.15, noNaN: true }),
      milledWidthIn: fc.constant(W),
    })
    fc.assert(
      fc.property(anyCut, fc.double({ min: 0, max: 35, noNaN: true }), (cut, draft) => {
        const straight = must(draftedVolume(cut, square, 0))
        expect(straight.cc).toBeCloseTo(must(cutVolumeCc({ areaIn2: 9, centreIn: 3.5 }, cut)), 4)
        const [less, least] = [draft, draft + 5].map((deg) => must(draftedVolume(cut, square, deg)).cc)
        expect(less).toBeLessThanOrEqual(straight.cc + 1e-9)
        expect(least).toBeLessThan(less ?? NaN)
      }),
      { numRuns: 40 },
    )
  })

  it('refuses an outline finer than the draft, and a draft that is none', () => {
    const chamfered = at([2, 0], [5, 0], [5, 2.99], [4.99, 3], [2, 3])
    expect(draftedVolume({ flatIn: 0.2, angleIn: 0, milledWidthIn: W }, chamfered, 40)).toMatchObject({
      refusal: { code: 'out-of-range' },
    })
    for (const draft of [46, -46, NaN]) {
      expect(draftedVolume({ flatIn: 0.02, angleIn: 0, milledWidthIn: W }, square, draft)).toMatchObject({
        refusal: { code: 'out-of-range' },
      })
    }
  })
})
