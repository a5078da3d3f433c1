import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { must } from '../../../lib/core/errors'
import { boltHoleSlot, spotFaceDepth } from '../../../lib/core/clearance/bolt-hole'
import { boltReach, dowelFit } from '../../../lib/core/clearance/bolt-reach'
import { newDeck, plus, rad } from './vectors'

const width = 7
const angled = (angleDeg: number) => ({
  flatIn: 0.01,
  angleIn: width * Math.tan(rad(angleDeg)),
  milledWidthIn: width,
})
const hole = { holeLengthIn: 3.5, holeDiameterIn: 0.5, boltDiameterIn: 0.4375, dowels: true }

describe('a leaning bolt in its hole', () => {
  it('leans 0.0611 in over 3.5 in at one degree', () => {
    expect(must(boltHoleSlot({ cut: angled(1), ...hole })).leanIn).toBeCloseTo(0.0611, 4)
  })

  it('slot with dowels and without, worked by hand', () => {
    // 3.5·sin 1° = 0.061083; (0.5 − 0.4375)/2 = 0.03125
    expect(must(boltHoleSlot({ cut: angled(1), ...hole })).slotIn).toBeCloseTo(0.029833, 5)
    // 0.4375 + 0.061083 − 0.5·0.999848 = −0.001341: passes, the head having shifted.
    expect(must(boltHoleSlot({ cut: angled(1), ...hole, dowels: false }))).toMatchObject({
      slotIn: 0,
      slotToward: null,
    })
    // 2°: 0.4375 + 0.122148 − 0.5·0.999391 = 0.059953
    expect(must(boltHoleSlot({ cut: angled(2), ...hole, dowels: false })).slotIn).toBeCloseTo(0.059953, 5)
  })

  it('the bolt meets the wall on the shallow side, by vectors: its edge at the top, against the hole’s [derived]', () => {
    const deck = newDeck(0, width * Math.tan(rad(1)), width)
    const middle = [3, 3 * Math.tan(rad(1))] as const
    // Up the bolt, square to the new deck, until it is 3.5 in up the hole, which is square to the old one.
    const top = plus(middle, deck.up, 3.5 / deck.up[1])
    const shallowEdgeOfBolt = top[0] - hole.boltDiameterIn / 2 / deck.up[1]
    const shallowWall = middle[0] - hole.holeDiameterIn / 2
    expect(shallowEdgeOfBolt).toBeLessThan(shallowWall)
    const slot = must(boltHoleSlot({ cut: angled(1), ...hole }))
    expect(slot.slotToward).toBe('shallow')
    expect(slot.slotIn).toBeCloseTo(shallowWall - shallowEdgeOfBolt, 3)
  })

  it('touches first when T·sin φ passes half the play', () => {
    const play = (hole.holeDiameterIn - hole.boltDiameterIn) / 2
    const touching = (Math.asin(play / 3.5) * 180) / Math.PI
    expect(must(boltHoleSlot({ cut: angled(touching * 0.999), ...hole })).slotIn).toBe(0)
    expect(must(boltHoleSlot({ cut: angled(touching * 1.001), ...hole })).slotIn).toBeGreaterThan(0)
  })

  it('a flat cut leans nothing and needs nothing; an angle cut says what it needs', () => {
    const nothing = { holeLengthIn: null, holeDiameterIn: null, boltDiameterIn: null, dowels: true }
    const flat = { flatIn: 0.05, angleIn: 0, milledWidthIn: null }
    expect(must(boltHoleSlot({ cut: flat, ...nothing }))).toEqual({ slotIn: 0, slotToward: null, leanIn: 0 })
    expect(boltHoleSlot({ cut: angled(1), ...nothing })).toMatchObject({
      refusal: { code: 'missing', needs: ['holeLengthIn', 'holeDiameterIn', 'boltDiameterIn'] },
    })
  })

  it('more angle, more slot; never less than none, never NaN', () => {
    const angle = fc.double({ min: 0, max: 4, noNaN: true })
    fc.assert(
      fc.property(angle, angle, fc.boolean(), (one, other, dowels) => {
        const [less, more] = [Math.min(one, other), Math.max(one, other)]
        const slot = (deg: number) => must(boltHoleSlot({ cut: angled(deg), ...hole, dowels })).slotIn
        expect(slot(more)).toBeGreaterThanOrEqual(slot(less))
        expect(slot(less)).toBeGreaterThanOrEqual(0)
      }),
    )
    const any = fc.double()
    fc.assert(
      fc.property(any, any, any, any, (holeLengthIn, holeDiameterIn, boltDiameterIn, angleIn) => {
        const cut = { flatIn: 0, angleIn, milledWidthIn: width }
        const slot = boltHoleSlot({ cut, holeLengthIn, holeDiameterIn, boltDiameterIn, dowels: true })
        if (slot.ok) expect(Number.isFinite(slot.value.slotIn)).toBe(true)
      }),
    )
  })
})

describe('seat of the bolt, and how deep it reaches', () => {
  it('a spot face 0.875 across at one degree is 0.0153 deep on its high side', () => {
    expect(must(spotFaceDepth(angled(1), 0.875))).toBeCloseTo(0.0153, 4)
    expect(must(spotFaceDepth({ flatIn: 0.05, angleIn: 0, milledWidthIn: null }, null))).toBe(0)
    expect(spotFaceDepth(angled(1), null)).toMatchObject({
      refusal: { code: 'missing', needs: ['spotFaceIn'] },
    })
  })

  it('metal gone and spot face together, against the thread that was left', () => {
    expect(must(boltReach(0.083, 0.015, 0.12))).toMatchObject({ bottoms: false })
    expect(must(boltReach(0.083, 0.015, 0.12)).leftIn).toBeCloseTo(0.022, 12)
    expect(must(boltReach(0.12, 0.015, 0.12)).bottoms).toBe(true)
    expect(must(boltReach(0.12, 0, 0.12)).bottoms).toBe(false)
    expect(boltReach(null, 0.015, null)).toMatchObject({
      refusal: { code: 'missing', needs: ['totalGoneIn', 'threadLeftIn'] },
    })
    expect(boltReach(-0.1, 0, 0.1)).toMatchObject({ refusal: { code: 'out-of-range' } })
  })

  it('dowels against what their hole has to spare', () => {
    expect(must(dowelFit(0.083, 0.1)).leftIn).toBeCloseTo(0.017, 12)
    expect(must(dowelFit(0.11, 0.1)).bottoms).toBe(true)
    expect(dowelFit(0.1, null)).toMatchObject({ refusal: { code: 'missing', needs: ['spareDepthIn'] } })
  })
})
