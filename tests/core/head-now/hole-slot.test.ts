import { describe, expect, it } from 'vitest'
import { must } from '@/lib/core/errors'
import { flatGone, goneByCut } from '@/lib/core/head-now/gone'
import { slotAfterCuts } from '@/lib/core/head-now/hole-slot'
import { rad } from '../clearance/vectors'

const hole = { lengthNewIn: 3.6, holeDiameterIn: 0.5, boltDiameterIn: 0.4375, fromShallowEdgeIn: null }
const half = 7 * Math.tan(rad(0.5))
const cut = (flatIn: number, angleIn: number) => ({ flatIn, angleIn, milledWidthIn: 7 })

describe('a bolt after all cuts', () => {
  it('leans by both cuts together: two of half a degree are one, to 4 thou in a thousand', () => {
    const before = goneByCut({ flatIn: 0, angleIn: half, deepEdge: 'exhaust' })
    const found = must(slotAfterCuts(hole, before, cut(0.1, half), 'exhaust'))
    // T 3.6 − 0.1 where least is gone; atan(2·tan 0.5°) = 0.99992°.
    expect(found.leanIn).toBeCloseTo(3.5 * Math.sin(Math.atan(2 * Math.tan(rad(0.5)))), 12)
    expect(found.slotIn).toBeCloseTo(found.leanIn - 0.03125, 12)
    expect(found).toMatchObject({ slotToward: 'shallow', highSide: 'shallow', wholeLean: true })
  })

  it('at a place on record the length is that of the place: 3.6 − 0.02 − 0.5·7·tan 1°', () => {
    const found = must(
      slotAfterCuts({ ...hole, fromShallowEdgeIn: 3.5 }, flatGone(0.02), cut(0, 7 * Math.tan(rad(1))), 'exhaust'),
    )
    expect(found.leanIn).toBeCloseTo((3.6 - 0.02 - 3.5 * Math.tan(rad(1))) * Math.sin(rad(1)), 12)
  })

  it('cuts that lean against each other cancel, and the slot goes to the side of what is left', () => {
    const degree = goneByCut({ flatIn: 0, angleIn: 7 * Math.tan(rad(1)), deepEdge: 'intake' })
    const level = must(slotAfterCuts(hole, degree, cut(0, 7 * Math.tan(rad(1))), 'exhaust'))
    expect(level).toMatchObject({ slotIn: 0, slotToward: null })
    const left = must(slotAfterCuts({ ...hole, holeDiameterIn: 0.44 }, degree, cut(0, half), 'exhaust'))
    expect(left).toMatchObject({ slotToward: 'deep', highSide: 'deep' })
  })

  it('what was gone before and is not known is said, and this cut’s own lean taken', () => {
    const found = must(slotAfterCuts(hole, null, cut(0.02, half), 'exhaust'))
    expect(found.wholeLean).toBe(false)
    expect(found.leanIn).toBeCloseTo(3.58 * Math.sin(rad(0.5)), 12)
  })

  it('a bolt larger than its hole is refused, on a flat deck too', () => {
    const wrong = { ...hole, boltDiameterIn: 0.51 }
    for (const angleIn of [0, half]) {
      expect(slotAfterCuts(wrong, flatGone(0), cut(0.02, angleIn), 'exhaust')).toMatchObject({
        ok: false,
        refusal: { code: 'contradiction' },
      })
    }
  })

  it('a cut of absurd depth is refused with the part that is wrong', () => {
    for (const [flatIn, angleIn, part] of [
      [-1.3e308, half, 'flatIn'],
      [0.02, -1.7e308, 'angleIn'],
    ] as const) {
      const found = slotAfterCuts(hole, null, cut(flatIn, angleIn), 'exhaust')
      expect(found).toMatchObject({ ok: false, refusal: { code: 'out-of-range' } })
      expect(found.ok ? [] : Object.keys(found.refusal.fields ?? {})).toEqual([part])
    }
  })

  it.each([
    ['a bolt of −0.4375', { boltDiameterIn: -0.4375 }],
    ['a hole of nothing', { holeDiameterIn: 0 }],
    ['a hole 13 in long', { lengthNewIn: 13 }],
  ])('%s is refused on a flat deck as on a leaning one', (_, wrong) => {
    for (const angleIn of [0, half]) {
      expect(slotAfterCuts({ ...hole, ...wrong }, flatGone(0), cut(0, angleIn), 'exhaust')).toMatchObject({
        ok: false,
        refusal: { code: 'out-of-range' },
      })
    }
  })
})
