import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { must } from '../../../lib/core/errors'
import { camDrop, installedHeightGrowth, pointDrop, rockerDrop } from '../../../lib/core/clearance/point-drop'
import { heightOver, motionOf, movedPoint, moveOf } from '../../../lib/core/clearance/rigid-motion'
import { newDeck, rad } from './vectors'

const width = 7
const degree = { flatIn: 0, angleIn: width * Math.tan(rad(1)), milledWidthIn: width }

describe('the cut head on its block, against vectors [derived]', () => {
  const anyCut = fc.record({
    flatIn: fc.double({ min: 0, max: 0.3, noNaN: true }),
    angleIn: fc.double({ min: 0, max: 0.3, noNaN: true }),
    milledWidthIn: fc.double({ min: 4, max: 12, noNaN: true }),
  })
  const place = fc.double({ min: -10, max: 10, noNaN: true })

  it('any point of any cut head stands where the construction puts it', () => {
    fc.assert(
      fc.property(anyCut, place, place, place, (cut, xIn, zIn, dowelXIn) => {
        const deck = newDeck(cut.flatIn, cut.angleIn, cut.milledWidthIn)
        const motion = must(motionOf(cut))
        const [x, z] = deck.onBlock([xIn, zIn], dowelXIn)
        expect(motion.angleRad).toBeCloseTo(deck.angleRad, 12)
        expect(heightOver(motion, { xIn, zIn })).toBeCloseTo(deck.height([xIn, zIn]), 10)
        const moved = movedPoint(motion, dowelXIn, { xIn, zIn })
        expect(moved.xIn).toBeCloseTo(x, 10)
        expect(moved.zIn).toBeCloseTo(z, 10)
        expect(moveOf(motion, { xIn, zIn }, dowelXIn).downIn).toBeCloseTo(zIn - z, 10)
      }),
    )
  })

  it('is rigid: two points stay as far apart as they were', () => {
    fc.assert(
      fc.property(anyCut, place, place, place, place, place, (cut, x1, z1, x2, z2, dowelXIn) => {
        const motion = must(motionOf(cut))
        const [a, b] = [
          movedPoint(motion, dowelXIn, { xIn: x1, zIn: z1 }),
          movedPoint(motion, dowelXIn, { xIn: x2, zIn: z2 }),
        ]
        expect(Math.hypot(a.xIn - b.xIn, a.zIn - b.zIn)).toBeCloseTo(Math.hypot(x1 - x2, z1 - z2), 9)
      }),
    )
  })

  it('no cut moves nothing, a flat cut brings all down by its depth, an angle cut leans the top to the deep edge', () => {
    const none = must(motionOf({ flatIn: 0, angleIn: 0, milledWidthIn: null }))
    expect(movedPoint(none, 3, { xIn: 1, zIn: 2 })).toEqual({ xIn: 1, zIn: 2 })
    const flat = must(motionOf({ flatIn: 0.03, angleIn: 0, milledWidthIn: null }))
    expect(moveOf(flat, { xIn: 1, zIn: 2 }, null)).toEqual({ downIn: 0.03, towardDeepIn: 0 })
    const { towardDeepIn } = moveOf(must(motionOf(degree)), { xIn: 0, zIn: 4 }, 0)
    expect(towardDeepIn).toBeCloseTo(4 * 0.0174524, 6) // sin 1° = 0.0174524
    expect(moveOf(must(motionOf(degree)), { xIn: 0, zIn: 4 }, null).towardDeepIn).toBeNull()
  })

  it('refuses what cannot be cut', () => {
    expect(motionOf({ ...degree, flatIn: -0.001 })).toMatchObject({ refusal: { code: 'out-of-range' } })
    expect(motionOf({ ...degree, flatIn: 0.501 })).toMatchObject({ refusal: { code: 'out-of-range' } })
    expect(motionOf({ ...degree, angleIn: NaN })).toMatchObject({ refusal: { code: 'out-of-range' } })
    expect(motionOf({ ...degree, milledWidthIn: null })).toMatchObject({
      refusal: { code: 'missing', needs: ['milledWidthIn'] },
    })
    expect(motionOf({ flatIn: 0, angleIn: 0.5, milledWidthIn: 5.7 })).toMatchObject({
      refusal: { code: 'out-of-range' },
    }) // 5.01°
    expect(motionOf({ flatIn: 0, angleIn: 0.5, milledWidthIn: 5.8 }).ok).toBe(true) // 4.93°
  })

  it('five degrees over seven inches, from 23° to 18°, is 0.612 in: not possible', () => {
    expect(7 * Math.tan(rad(5))).toBeCloseTo(0.612, 3)
    expect(motionOf({ flatIn: 0, angleIn: 0.612, milledWidthIn: 7 })).toMatchObject({
      refusal: { code: 'out-of-range' },
    })
  })
})

describe('what comes down with the head', () => {
  it('the rocker stand, by the same motion; the pushrod is longer by it', () => {
    const deck = newDeck(0.02, degree.angleIn, width)
    const drop = must(rockerDrop({ ...degree, flatIn: 0.02 }, { xIn: 2, zIn: 5 }, 1))
    const [x, z] = deck.onBlock([2, 5], 1)
    expect(drop.downIn).toBeCloseTo(5 - z, 12)
    expect(drop.towardDeepIn).toBeCloseTo(x - 2, 12)
    expect(drop.pushrodLongerIn).toBe(drop.downIn)
  })

  it('a flat cut needs no places; an angle cut names those it needs', () => {
    const nowhere = { xIn: null, zIn: undefined }
    expect(must(rockerDrop({ ...degree, flatIn: 0.03, angleIn: 0 }, nowhere)).downIn).toBe(0.03)
    expect(rockerDrop(degree, nowhere)).toMatchObject({ refusal: { code: 'missing', needs: ['xIn', 'zIn'] } })
    expect(must(pointDrop(degree, { label: 'port', xIn: 1, zIn: 1 })).towardDeepIn).toBeNull()
    for (const far of [
      { xIn: 20.1, zIn: 1 },
      { xIn: -20.1, zIn: 1 },
      { xIn: 1, zIn: 20.1 },
      { xIn: 1, zIn: -20.1 },
    ]) {
      expect(pointDrop(degree, { label: 'port', ...far })).toMatchObject({
        refusal: { code: 'out-of-range' },
      })
    }
  })

  it('the cam: both runs of the chain are shorter by the drop, and no degrees without the pulley', () => {
    const drop = must(camDrop({ flatIn: 0.03, angleIn: 0, milledWidthIn: null }, { xIn: null, zIn: null }))
    expect(drop.downIn).toBe(0.03)
    expect(drop.slackIn).toBeCloseTo(0.06, 12)
    expect(drop.note).toContain('retards')
  })

  it('installed height grows by the sink, whatever the deck did', () => {
    expect(must(installedHeightGrowth(0.01))).toBe(0.01)
    expect(installedHeightGrowth(-0.01)).toMatchObject({ refusal: { code: 'out-of-range' } })
  })
})
