import Module from 'manifold-3d'
import { describe, expect, it } from 'vitest'
import { must } from '@/lib/core/errors'
import { cornerInsetOf } from '@/lib/core/straightness/corner-inset'
import { cornersFit, cornerNames, type Corners } from '@/lib/core/straightness/corners-fit'
import { leanShiftIn } from '@/lib/core/straightness/lean-shift'
import { leanShiftWords } from '@/lib/words/corner-inset'

const wasm = await Module()
wasm.setup()
const { Manifold } = wasm
type Solid = InstanceType<typeof Manifold>

const width = 7
const length = 20
const thick = 4.5
const deg = 180 / Math.PI

/** A head as a block: x from the intake edge, y from end 1, the deck at z = 0, the top face at z = 4.5. */
const block = () => Manifold.cube([width, length, thick])

/** What is left above a plane through the deck: `at` inches up at the intake edge, rising by `slope` toward the exhaust. */
const above = (solid: Solid, at: number, slope: number, taper = 0): Solid => {
  const size = Math.hypot(slope, taper, 1)
  // Tapered about the middle of the length.
  return solid.trimByPlane([-slope / size, -taper / size, 1 / size], (at - (taper * length) / 2) / size)
}

/** The least of its heights over z = 0: the gauge's column is as thin as a pin, so its mean height is its height. */
function gauge(onDeck: Solid, x: number, y: number): number {
  const pin = 0.001
  const column = Manifold.cube([pin, pin, 3 * thick]).translate([x - pin / 2, y - pin / 2, -thick])
  return onDeck.intersect(column).volume() / pin ** 2
}

/**
 * The four corners touched on top at these places, the head lying on the deck that was cut with this slope: the solid is
 * turned until that deck is level at z = 0.
 */
function cornersOf(solid: Solid, at: number, slope: number, inset: { edgeIn: number; endIn: number }): Corners {
  const turn = Math.atan(slope)
  const level = solid.translate([0, 0, -at]).rotate([0, turn * deg, 0])
  return Object.fromEntries(
    cornerNames.map((name) => {
      const [edge, end] = name.split('-')
      const x = edge === 'exhaust' ? width - inset.edgeIn : inset.edgeIn
      const y = end === '2' ? length - inset.endIn : inset.endIn
      // The same point of the top face, after the turn.
      const turnedX = x * Math.cos(turn) + (thick - at) * Math.sin(turn)
      return [name, gauge(level, turnedX, y)]
    }),
  )
}

const deck = (inset: { edgeIn: number; endIn: number } | null, milledWidthIn = width, deckLengthIn = length) =>
  ({ deepEdge: 'exhaust', milledWidthIn, deckLengthIn, inset }) as const

describe('corners touched inside the edges, on solids', () => {
  const inset = { edgeIn: 0.5, endIn: 0.5 }
  const before = cornersOf(block(), 0, 0, inset)

  it.each([
    [0.02, 0.063],
    [0, 7 * Math.tan(Math.PI / 180)],
    [0.04, 0],
  ])('a cut of %f flat and %f at the edge comes back', (flat, angle) => {
    const cut = above(block(), flat, angle / width)
    const fit = must(cornersFit(deck(inset), before, cornersOf(cut, flat, angle / width, inset)))
    expect(fit.flatIn).toBeCloseTo(flat, 5)
    expect(fit.angleIn).toBeCloseTo(angle, 5)
    expect(fit.taperIn).toBeCloseTo(0, 5)
  })

  it('20.0 and 63.0 as a machinist reads them; taken as touched at the edges 24.5 and 54.0', () => {
    const after = cornersOf(above(block(), 0.02, 0.063 / width), 0.02, 0.063 / width, inset)
    const thou = (valueIn: number) => (valueIn * 1000).toFixed(1)
    const right = must(cornersFit(deck(inset), before, after))
    expect([thou(right.flatIn), thou(right.angleIn)]).toEqual(['20.0', '63.0'])
    const wrong = must(cornersFit(deck({ edgeIn: 0, endIn: 0 }), before, after))
    expect([thou(wrong.flatIn), thou(wrong.angleIn)]).toEqual(['24.5', '54.0'])
  })

  it('another inset at the ends changes nothing across, and the taper is that of the whole length', () => {
    const uneven = { edgeIn: 0.75, endIn: 1.5 }
    const after = Object.fromEntries(
      // 3 thou deeper at end 2 over 20 in, square to the old deck: read 0.003·1.5/20 and 0.003·18.5/20 on the way.
      cornerNames.map((name) => [name, thick - 0.02 - (0.003 * (name.endsWith('2') ? 18.5 : 1.5)) / 20]),
    )
    const all = Object.fromEntries(cornerNames.map((name) => [name, thick]))
    const fit = must(cornersFit(deck(uneven), all, after))
    expect(fit.taperIn).toBeCloseTo(0.003, 6)
    expect(fit.flatIn).toBeCloseTo(0.0215, 6)
    expect(fit.angleIn).toBeCloseTo(0, 7)
  })
})

describe('a head that leans before the cut, on solids', () => {
  const inset = { edgeIn: 0.5, endIn: 0.5 }

  it.each([
    [1, 1],
    [0.5, 0.5],
    [1, -0.5],
  ])('leaning %f°, cut at %f°: the flat part is off by T·sin Φ·tan φ', (leanDeg, cutDeg) => {
    const lean = Math.tan(leanDeg / deg)
    // The second cut lies at its own angle to the first deck; in the block's frame the slopes' angles add up.
    const both = Math.tan((leanDeg + cutDeg) / deg)
    // Flat 80 thou at the first deck's intake edge, square to it.
    const up = 0.08 / Math.cos(leanDeg / deg)
    const first = above(block(), 0.01, lean)
    const second = above(first, 0.01 + up, both)
    const fit = must(
      cornersFit(deck(inset), cornersOf(first, 0.01, lean, inset), cornersOf(second, 0.01 + up, both, inset)),
    )
    const wanted = (4.5 * Math.sin(leanDeg / deg) * Math.sin(cutDeg / deg)) / Math.cos(cutDeg / deg)
    expect(fit.flatIn - 0.08).toBeCloseTo(wanted, 4)
    expect(Math.sign(fit.leanShiftIn ?? 0)).toBe(Math.sign(wanted))
    // The mean thickness stands for T: within 2 % of it.
    expect(Math.abs((fit.leanShiftIn ?? 0) - wanted)).toBeLessThan(0.02 * Math.abs(wanted))
  })

  it('0.34 thou at half a degree says nothing, 1.4 thou at one degree is said', () => {
    expect(must(leanShiftIn(4.5, 0.5, 0.5)) * 1000).toBeCloseTo(0.34, 2)
    expect(must(leanShiftIn(4.5, 1, 1)) * 1000).toBeCloseTo(1.37, 2)
    expect(leanShiftWords(0.00034)).toBe('')
    expect(leanShiftWords(0.0005)).toBe('')
    expect(leanShiftWords(null)).toBe('')
    expect(leanShiftWords(0.00137)).toContain('1.4 thou more than was cut')
    expect(leanShiftWords(-0.00137)).toContain('1.4 thou less than was cut')
  })

  it('needs its figures, and refuses what cannot be', () => {
    expect(leanShiftIn(null, 1, 1)).toMatchObject({ refusal: { code: 'missing', needs: ['thicknessIn'] } })
    expect(leanShiftIn(4.5, 6, 1)).toMatchObject({ refusal: { code: 'out-of-range' } })
  })
})

describe('where the corners are touched', () => {
  const shop = { edgeIn: 0.4, endIn: 0.6 }
  it('is said by the record, else by the shop, else by nobody', () => {
    expect(cornerInsetOf({ cornerInsetEdgeIn: 0.5, cornerInsetEndIn: 0.75 }, shop)).toEqual({
      edgeIn: 0.5,
      endIn: 0.75,
    })
    expect(cornerInsetOf({ cornerInsetEdgeIn: 0.5 }, shop)).toEqual(shop)
    expect(cornerInsetOf({}, null)).toBeNull()
    expect(cornerInsetOf({ cornerInsetEdgeIn: 0, cornerInsetEndIn: 0 }, shop)).toEqual({ edgeIn: 0, endIn: 0 })
  })

  it('unknown, the corners are not fitted; past the middle they are refused', () => {
    const all = Object.fromEntries(cornerNames.map((name) => [name, 4.5]))
    expect(cornersFit(deck(null), all, all)).toMatchObject({ refusal: { code: 'missing', needs: ['cornerInset'] } })
    expect(cornersFit(deck({ edgeIn: 3, endIn: 0 }, 6), all, all)).toMatchObject({ refusal: { code: 'contradiction' } })
    expect(cornersFit(deck({ edgeIn: 0, endIn: 3 }, 7, 6), all, all)).toMatchObject({
      refusal: { code: 'contradiction' },
    })
    expect(cornersFit(deck({ edgeIn: -0.1, endIn: 0 }), all, all)).toMatchObject({ refusal: { code: 'out-of-range' } })
    expect(cornersFit(deck({ edgeIn: 2.9, endIn: 2.9 }, 6), all, all).ok).toBe(true)
  })
})
