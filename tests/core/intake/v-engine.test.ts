import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { must } from '../../../lib/core/errors'
import { inlineIntake } from '../../../lib/core/intake/inline'
import { faceAngleFromManifold, vIntake, type VIntakeInput } from '../../../lib/core/intake/v-engine'
import { dot, minus, newDeck, plus, rad, type V2 } from '../clearance/vectors'

const flat = (flatIn: number) => ({ flatIn, angleIn: 0, milledWidthIn: null })
const nowhere = { portXIn: null, portZIn: null, dowelXIn: null }
const base = { deepEdge: 'exhaust' as const, ...nowhere }

/**
 * One bank of a V engine, standing up, and its manifold: the head is cut and set on the block, the manifold lowered
 * until a line from the head's port centre, square to the flange, meets the flange's own port centre.
 */
function standingEngine(input: VIntakeInput & { readonly widthIn: number }) {
  const { cut, deepEdge, widthIn } = input
  const [h, a] = [rad((input.bankAngleDeg ?? NaN) / 2), rad(input.intakeFaceDeg ?? NaN)]
  const [x, z, dowel] = [input.portXIn ?? NaN, input.portZIn ?? NaN, input.dowelXIn ?? NaN]
  const deck = newDeck(cut.flatIn, cut.angleIn, widthIn)
  // Engine frame: first number away from the valley, second upward. The bore leans out of the valley by h.
  const bore: V2 = [Math.sin(h), Math.cos(h)]
  const away: V2 = [Math.cos(h), -Math.sin(h)]
  const outward = deepEdge === 'exhaust' ? 1 : -1
  const standing = ([px, pz]: V2): V2 => plus(plus([0, 0], away, outward * px), bore, pz)
  // Up the face, in the section: square to the deck, its top leaning to the exhaust by a.
  const upFace: V2 = [outward * Math.sin(a), Math.cos(a)]
  const port: V2 = [x, z]
  const onBlock = (point: V2) => standing(deck.onBlock(point, dowel))
  const flange: V2 = minus(standing(plus(port, upFace)), standing(port))
  const square: V2 = [-flange[1], flange[0]] // toward the valley
  const [before, after] = [standing(port), onBlock(port)]
  // The manifold goes straight down by v; its port centre must be met along the flange: one linear equation.
  const offAlong = (v: number) => dot(minus(after, plus(before, [0, -v])), flange)
  const railIn = offAlong(0) / (offAlong(0) - offAlong(1))
  const manifold = plus(before, [0, -railIn])
  /** Between face and flange, `upIn` up the flange from its port centre: as far up the face as reaches there. */
  const sideAt = (upIn: number) =>
    dot(minus(onBlock(plus(port, upFace, upIn / Math.cos(deck.angleRad))), manifold), square)
  return { railIn, sideIn: sideAt(0), sideAt }
}

describe('flat cut of a V engine’s heads', () => {
  it.each([
    // The trade's usual multipliers 1.1, 1.23, 1.4, 1.7 and rail 1.71 are from memory; the figures are derived.
    [90, 0, 1.0, 1.414],
    [90, 5, 1.1, 1.55],
    [90, 10, 1.233, 1.717],
    [90, 15, 1.414, 1.932],
    [90, 20, 1.673, 2.224],
    [60, 0, 0.577, null],
    [60, 10, 0.653, null],
    [60, 20, 0.778, null],
    [60, 30, 1.0, null],
  ])('%s° bank, face at %s°: side %s, rails %s per unit of cut', (bankAngleDeg, intakeFaceDeg, side, rail) => {
    const cutIn = 0.1
    const given = { ...base, cut: flat(cutIn), bankAngleDeg, intakeFaceDeg }
    const figures = must(vIntake(given))
    expect(figures.sideIn / cutIn).toBeCloseTo(side, 3)
    if (rail !== null) expect(figures.railIn / cutIn).toBeCloseTo(rail, 3)
    const engine = standingEngine({ ...given, portXIn: 0, portZIn: 2, dowelXIn: 3, widthIn: 7 })
    expect(figures.sideIn).toBeCloseTo(engine.sideIn, 12)
    expect(figures.railIn).toBeCloseTo(engine.railIn, 12)
    expect(figures.awayIn).toBe(0)
    expect(figures.face).toMatchObject({ gapIn: 0 })
    expect(figures.face?.deckEndIn).toBeCloseTo(figures.sideIn, 12)
    expect(figures.face?.coverEndIn).toBeCloseTo(figures.sideIn, 12)
  })

  it('says of a face square to the deck that it still seals', () => {
    const given = { ...base, cut: flat(0.03), bankAngleDeg: 90 }
    expect(must(vIntake({ ...given, intakeFaceDeg: 0 })).notes.join()).toContain('port alignment')
    expect(must(vIntake({ ...given, intakeFaceDeg: 10 })).notes).toEqual([])
  })

  it('no cut, nothing to correct', () => {
    const none = must(vIntake({ ...base, cut: flat(0), bankAngleDeg: 90, intakeFaceDeg: 10 }))
    expect([none.sideIn, none.railIn, none.dropIn]).toEqual([0, 0, 0])
  })
})

describe('angle cut', () => {
  const width = 7
  const given = {
    cut: { flatIn: 0.02, angleIn: width * Math.tan(rad(1)), milledWidthIn: width },
    deepEdge: 'exhaust' as const,
    bankAngleDeg: 90,
    intakeFaceDeg: 10,
    portXIn: 0.4,
    portZIn: 2.1,
    dowelXIn: 3.5,
    faceHeightIn: 3,
  }
  const mirrored = { ...given, deepEdge: 'intake' as const, portXIn: width - 0.4, dowelXIn: width - 3.5 }

  it.each([
    ['exhaust', given],
    ['intake', mirrored],
  ])('deep at the %s edge: side and rails as the standing engine shows them [derived]', (_, input) => {
    const figures = must(vIntake(input))
    const engine = standingEngine({ ...input, widthIn: width })
    expect(figures.sideIn).toBeCloseTo(engine.sideIn, 10)
    expect(figures.railIn).toBeCloseTo(engine.railIn, 10)
  })

  it.each([
    ['exhaust', given],
    ['intake', mirrored],
  ])('deep at the %s edge: the wedge, at both ends of the face [derived]', (edge, input) => {
    const { face } = must(vIntake(input))
    const engine = standingEngine({ ...input, widthIn: width })
    const [deckEnd, coverEnd] = [engine.sideAt(-1.5), engine.sideAt(1.5)]
    const gap = Math.max(0, -deckEnd, -coverEnd)
    expect(face?.gapIn).toBeCloseTo(gap, 10)
    expect(face?.deckEndIn).toBeCloseTo(deckEnd + gap, 10)
    expect(face?.coverEndIn).toBeCloseTo(coverEnd + gap, 10)
    // Most at the deck end when deep at the exhaust edge, at the cover end when deep at the intake edge.
    expect((face?.deckEndIn ?? NaN) > (face?.coverEndIn ?? NaN)).toBe(edge === 'exhaust')
  })

  it('the port centre moves away from the valley, or into it, by the edge that is deep', () => {
    expect(must(vIntake(given)).awayIn).toBeGreaterThan(0)
    expect(must(vIntake(mirrored)).awayIn).toBeLessThan(0)
  })

  it('where the face stands off already it is a gap, never a negative cut: only the wedge is cut', () => {
    const high = must(vIntake({ ...given, cut: { ...given.cut, flatIn: 0 }, portZIn: 5 }))
    expect(high.sideIn).toBeLessThan(0)
    expect(high.face?.coverEndIn).toBeCloseTo(0, 12)
    expect(high.face?.deckEndIn).toBeCloseTo(3 * Math.tan(rad(1)), 10)
    expect(high.face?.gapIn).toBeGreaterThan(0)
    expect(high.notes).toContain('thicker gasket or manifold work; cut only the wedge')
    // What is cut and what is left of a gap make up the whole at either end.
    const engine = standingEngine({ ...given, cut: { ...given.cut, flatIn: 0 }, portZIn: 5, widthIn: width })
    expect((high.face?.deckEndIn ?? NaN) - (high.face?.gapIn ?? NaN)).toBeCloseTo(engine.sideAt(-1.5), 10)
  })

  it('without the face’s height the wedge is left out, not guessed', () => {
    const figures = must(vIntake({ ...given, faceHeightIn: null }))
    expect(figures.face).toBeNull()
    expect(figures.sideIn).toBe(must(vIntake(given)).sideIn)
  })

  it('the port’s own place on the face counts', () => {
    const low = must(vIntake({ ...given, portUpFaceIn: 0.5 }))
    const engine = standingEngine({ ...given, widthIn: width })
    expect((low.face?.deckEndIn ?? NaN) - (low.face?.gapIn ?? NaN)).toBeCloseTo(engine.sideAt(-0.5), 10)
    expect(vIntake({ ...given, portUpFaceIn: 3.1 })).toMatchObject({ refusal: { code: 'out-of-range' } })
  })

  it('names what it needs', () => {
    expect(vIntake({ ...given, ...nowhere })).toMatchObject({
      refusal: { code: 'missing', needs: ['portXIn', 'portZIn', 'dowelXIn'] },
    })
    expect(vIntake({ ...given, bankAngleDeg: null, intakeFaceDeg: null })).toMatchObject({
      refusal: { code: 'missing', needs: ['bankAngleDeg', 'intakeFaceDeg'] },
    })
  })

  it('any V: a continuous, finite answer as the standing engine gives it, or a refusal', () => {
    const place = fc.double({ min: -6, max: 8, noNaN: true })
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 180, noNaN: true }),
        fc.double({ min: -60, max: 60, noNaN: true }),
        place,
        place,
        place,
        fc.constantFrom('intake' as const, 'exhaust' as const),
        (bankAngleDeg, intakeFaceDeg, portXIn, portZIn, dowelXIn, deepEdge) => {
          const input = { ...given, bankAngleDeg, intakeFaceDeg, portXIn, portZIn, dowelXIn, deepEdge }
          const figures = vIntake(input)
          if (!figures.ok) {
            expect(bankAngleDeg / 2 + intakeFaceDeg).toBeGreaterThanOrEqual(85)
            return
          }
          const engine = standingEngine({ ...input, widthIn: width })
          expect(figures.value.sideIn).toBeCloseTo(engine.sideIn, 9)
          expect(figures.value.railIn).toBeCloseTo(engine.railIn, 9)
          expect(
            Math.min(figures.value.face?.deckEndIn ?? NaN, figures.value.face?.coverEndIn ?? NaN),
          ).toBeGreaterThanOrEqual(0)
        },
      ),
    )
  })
})

describe('refusals', () => {
  it('a flange lying nearly flat, and a bank that is none', () => {
    const given = { ...base, cut: flat(0.03), bankAngleDeg: 90 }
    expect(must(vIntake({ ...given, intakeFaceDeg: 39.9 })).sideIn).toBeGreaterThan(0)
    for (const input of [
      { ...given, intakeFaceDeg: 40 },
      { ...given, bankAngleDeg: 180, intakeFaceDeg: 0 },
      { ...given, bankAngleDeg: 181, intakeFaceDeg: -20 },
      { ...given, bankAngleDeg: -1, intakeFaceDeg: 0 },
      { ...given, intakeFaceDeg: NaN },
    ]) {
      expect(vIntake(input)).toMatchObject({ refusal: { code: 'out-of-range' } })
    }
  })
})

describe('the face angle from the manifold', () => {
  it('the flanges stand at bank + 2·a to one another', () => {
    expect(must(faceAngleFromManifold(110, 90))).toBe(10)
    expect(must(faceAngleFromManifold(90, 90))).toBe(0)
    expect(faceAngleFromManifold(null, 90)).toMatchObject({
      refusal: { code: 'missing', needs: ['flangeAngleDeg'] },
    })
  })
})

describe('an inline engine', () => {
  it('drop along the bore and along the face, both named', () => {
    const drop = must(inlineIntake({ cut: flat(0.03), intakeFaceDeg: 30, portXIn: null, portZIn: null }))
    expect(drop.alongBoreIn).toBe(0.03)
    expect(drop.alongFaceIn).toBeCloseTo(0.0259808, 7) // cos 30° = 0.8660254
  })

  it('after an angle cut, by vectors', () => {
    const deck = newDeck(0.02, 0.1, 7)
    const cut = { flatIn: 0.02, angleIn: 0.1, milledWidthIn: 7 }
    const drop = must(inlineIntake({ cut, intakeFaceDeg: 0, portXIn: 0.5, portZIn: 2 }))
    expect(drop.alongBoreIn).toBeCloseTo(2 - deck.height([0.5, 2]), 12)
    expect(inlineIntake({ cut, intakeFaceDeg: 0, portXIn: null, portZIn: 2 })).toMatchObject({
      refusal: { code: 'missing', needs: ['xIn'] },
    })
    for (const intakeFaceDeg of [60.1, -60.1]) {
      expect(inlineIntake({ cut, intakeFaceDeg, portXIn: 0.5, portZIn: 2 })).toMatchObject({
        refusal: { code: 'out-of-range' },
      })
    }
  })
})
