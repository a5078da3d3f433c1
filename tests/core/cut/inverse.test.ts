import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { angleGivenIn } from '../../../lib/core/cut/angle'
import { angleForVolume, flatAtAngle, flatForVolume } from '../../../lib/core/cut/inverse'
import { centroidShareOf } from '../../../lib/core/cut/split'
import { targetLine, type TargetLineInput } from '../../../lib/core/cut/target-line'
import { cutVolumeCc } from '../../../lib/core/cut/volume'
import { must } from '../../../lib/core/errors'

const W = 7
const opening = { areaIn2: 10.1706, centreIn: 0.635 * W, milledWidthIn: W }

describe('depths for a volume', () => {
  it('3 cc at 6 thou per cc: 18 thou flat [common practice]', () => {
    expect(must(flatForVolume(3, 10.1706))).toBeCloseTo(0.018, 6)
  })

  it('10 cc with 20 thou flat: 63 thou at the edge [common practice]', () => {
    expect(must(angleForVolume(10, 0.02, opening))).toBeCloseTo(0.063, 4)
  })

  it('10.190 cc at 1° from a round opening at the middle: nothing flat [derived]', () => {
    const round = { areaIn2: (Math.PI / 4) * 3.6 ** 2, centreIn: 3.5, milledWidthIn: W }
    expect(must(flatAtAngle(10.1904, 1, round))).toBeCloseTo(0, 5)
    // 2 cc more are 2/(16.387064·10.1788) = 11.99 thou flat.
    expect(must(flatAtAngle(12.1904, 1, round))).toBeCloseTo(0.01199, 5)
  })

  const any = {
    areaIn2: fc.double({ min: 4, max: 20, noNaN: true }),
    share: fc.double({ min: 0.2, max: 0.8, noNaN: true }),
    milledWidthIn: fc.double({ min: 4, max: 12, noNaN: true }),
    flatIn: fc.double({ min: 0, max: 0.1, noNaN: true }),
    deg: fc.double({ min: 0, max: 1, noNaN: true }),
  }

  it('each undoes the volume of a cut', () => {
    fc.assert(
      fc.property(fc.record(any), ({ areaIn2, share, milledWidthIn, flatIn, deg }) => {
        const of = { areaIn2, centreIn: share * milledWidthIn, milledWidthIn }
        const angleIn = milledWidthIn * Math.tan((deg * Math.PI) / 180)
        const taken = must(cutVolumeCc(of, { flatIn, angleIn, milledWidthIn }))
        expect(must(angleForVolume(taken, flatIn, of))).toBeCloseTo(angleIn, 9)
        expect(must(flatAtAngle(taken, deg, of))).toBeCloseTo(flatIn, 9)
        const flat = must(flatForVolume(taken, areaIn2))
        expect(must(cutVolumeCc(of, { flatIn: flat, angleIn: 0, milledWidthIn }))).toBeCloseTo(taken, 8)
      }),
    )
  })

  it('more volume takes more depth, none takes none', () => {
    expect(must(flatForVolume(0, 10))).toBe(0)
    expect(must(angleForVolume(0, 0, opening))).toBe(0)
    fc.assert(
      fc.property(fc.double({ min: 0, max: 30, noNaN: true }), (cc) => {
        expect(must(flatForVolume(cc + 0.1, 10))).toBeGreaterThan(must(flatForVolume(cc, 10)))
      }),
    )
  })

  it.each([
    ['less than nothing', () => flatForVolume(-1, 10), 'unreachable'],
    ['more than a head has', () => flatForVolume(90, 10), 'unreachable'],
    ['no area', () => flatForVolume(3, 0), 'out-of-range'],
    ['no number', () => flatForVolume(NaN, 10), 'out-of-range'],
    ['a flat part that takes more than is wanted', () => angleForVolume(3, 0.019, opening), 'unreachable'],
    ['a flat part below nothing', () => angleForVolume(3, -0.001, opening), 'out-of-range'],
    ['an edge deeper than a head has', () => angleForVolume(60, 0, opening), 'unreachable'],
    ['an angle that takes more than is wanted', () => flatAtAngle(3, 1, opening), 'unreachable'],
    ['six degrees', () => flatAtAngle(3, 6, opening), 'out-of-range'],
    ['an opening on the edge', () => angleForVolume(3, 0, { ...opening, centreIn: 0 }), 'out-of-range'],
    ['no width', () => flatAtAngle(3, 0.1, { ...opening, milledWidthIn: NaN }), 'out-of-range'],
  ])('refuses %s', (_, ask, code) => {
    expect(ask()).toMatchObject({ ok: false, refusal: { code } })
  })
})

describe('the centre of an opening', () => {
  const at = (share: number) => angleForVolume(0.1, 0, { ...opening, centreIn: share * W })

  it('lies between 2 and 98 per cent of the width', () => {
    expect([at(0.0201).ok, at(0.9799).ok]).toEqual([true, true])
    for (const share of [0.0199, 0.9801]) expect(at(share)).toMatchObject({ refusal: { code: 'out-of-range' } })
  })

  it('as a share of the width, while both are known and the width is one', () => {
    expect(centroidShareOf({ openingCentreIn: 4.445, milledWidthIn: 7 })).toBeCloseTo(0.635, 12)
    const unknown = [{ milledWidthIn: 7 }, { openingCentreIn: 4.445 }, { openingCentreIn: 0, milledWidthIn: 0 }]
    for (const facts of unknown) expect(centroidShareOf(facts)).toBeNull()
  })
})

describe('an angle given in degrees and as a depth', () => {
  it('must agree to half a thou', () => {
    expect(must(angleGivenIn({ angleIn: 0.1222, angleDeg: 1, milledWidthIn: W }))).toBe(0.1222)
    expect(angleGivenIn({ angleIn: 0.125, angleDeg: 1, milledWidthIn: W })).toMatchObject({
      refusal: { code: 'contradiction' },
    })
    expect(must(angleGivenIn({ milledWidthIn: null }))).toBeNull()
    expect(must(angleGivenIn({ angleIn: 0.125, milledWidthIn: null }))).toBe(0.125)
    expect(angleGivenIn({ angleDeg: 1, milledWidthIn: null })).toMatchObject({
      refusal: { code: 'missing', needs: ['milledWidthIn'] },
    })
  })
})

describe('the line of all cuts that reach a target', () => {
  const base: TargetLineInput = {
    depthIn: 0.06,
    centroidShare: 0.635,
    milledWidthIn: W,
    largestAngleDeg: null,
    limits: [],
  }
  const edge = (mostIn: number) => ({ name: 'thickness left at the deep edge', atShare: 1, mostIn })
  const land = (mostIn: number) => ({ name: 'land under the intake port', atShare: 0, mostIn })

  it('unbounded, from all flat to all angle: 0.060 to 0.0945 = 0.060/0.635', () => {
    const { from, to, allAngleIn } = must(targetLine(base))
    expect(from).toMatchObject({ flatIn: 0.06, angleIn: 0, angleDeg: 0, boundBy: 'all flat' })
    expect(to).toMatchObject({ flatIn: 0, boundBy: 'all angle' })
    expect(to.angleIn).toBeCloseTo(0.094488, 6)
    expect(allAngleIn).toBeCloseTo(0.094488, 6)
  })

  it('0.085 left at the deep edge: w = 0.025/0.365 = 0.0685', () => {
    const { to } = must(targetLine({ ...base, largestAngleDeg: 1, limits: [edge(0.085)] }))
    expect(to.angleIn).toBeCloseTo(0.068493, 6)
    expect(to.flatIn + to.angleIn).toBeCloseTo(0.085, 12)
    expect(to.boundBy).toBe('thickness left at the deep edge')
  })

  it('0.030 of land at the shallow edge: the angle must take the rest, w = 0.030/0.635', () => {
    const { from } = must(targetLine({ ...base, limits: [land(0.03)] }))
    expect(from.angleIn).toBeCloseTo(0.047244, 6)
    expect(from.flatIn).toBeCloseTo(0.03, 12)
    expect(from.boundBy).toBe('land under the intake port')
  })

  it('half a degree over 7 in is 0.0611', () => {
    const { to } = must(targetLine({ ...base, largestAngleDeg: 0.5 }))
    expect(to.angleIn).toBeCloseTo(0.061088, 6)
    expect(to.boundBy).toContain('largest angle')
  })

  it('a class of flat cuts only leaves one point', () => {
    const { from, to } = must(targetLine({ ...base, largestAngleDeg: 0 }))
    expect([from.angleIn, to.angleIn, to.flatIn]).toEqual([0, 0, 0.06])
  })

  it('says what stands against what when no cut is left', () => {
    const answer = targetLine({ ...base, limits: [land(0.03), edge(0.07)] })
    expect(answer).toMatchObject({ refusal: { code: 'unreachable' } })
    const { message } = answer.ok ? { message: '' } : answer.refusal
    expect(message).toContain('land under the intake port')
    expect(message).toContain('thickness left at the deep edge')
    expect(targetLine({ ...base, limits: [edge(-0.01)] })).toMatchObject({ refusal: { code: 'unreachable' } })
    const seat = { name: 'seat margin', atShare: 0.635, mostIn: 0.05 }
    expect(targetLine({ ...base, limits: [seat] })).toMatchObject({ refusal: { code: 'unreachable' } })
  })

  it('both ends reach the target, keep every limit, and lie in order', () => {
    const limit = fc.record({
      name: fc.constantFrom('a', 'b', 'c'),
      atShare: fc.double({ min: 0, max: 1, noNaN: true }),
      mostIn: fc.double({ min: 0, max: 0.3, noNaN: true }),
    })
    const input = fc.record({
      depthIn: fc.double({ min: 0, max: 0.1, noNaN: true }),
      centroidShare: fc.double({ min: 0.2, max: 0.9, noNaN: true }),
      milledWidthIn: fc.double({ min: 3, max: 12, noNaN: true }),
      largestAngleDeg: fc.double({ min: 0, max: 2, noNaN: true }),
      limits: fc.array(limit, { maxLength: 4 }),
    })
    fc.assert(
      fc.property(input, (asked) => {
        const line = targetLine(asked)
        if (!line.ok) {
          // Then no angle at all keeps the limits: tried one by one.
          const most = Math.min(
            asked.depthIn / asked.centroidShare,
            Math.tan((asked.largestAngleDeg * Math.PI) / 180) * asked.milledWidthIn,
          )
          for (let i = 0; i <= 50; i++) {
            const w = (most * i) / 50
            const kept = asked.limits.every(
              ({ atShare, mostIn }) => asked.depthIn + (atShare - asked.centroidShare) * w < mostIn - 1e-9,
            )
            expect(kept && asked.depthIn + (1 - asked.centroidShare) * w < 0.5).toBe(false)
          }
          return
        }
        for (const { flatIn, angleIn, angleDeg } of [line.value.from, line.value.to]) {
          expect(flatIn + angleIn * asked.centroidShare).toBeCloseTo(asked.depthIn, 9)
          expect(angleDeg).toBeLessThanOrEqual(asked.largestAngleDeg + 1e-9)
          for (const { atShare, mostIn } of asked.limits)
            expect(flatIn + angleIn * atShare).toBeLessThanOrEqual(mostIn + 1e-9)
        }
        expect(line.value.from.angleIn).toBeLessThanOrEqual(line.value.to.angleIn + 1e-12)
      }),
      { numRuns: 500 },
    )
  })

  it.each([
    ['no centre', { centroidShare: null }, 'missing'],
    ['no width', { milledWidthIn: null }, 'missing'],
    ['no depth', { depthIn: NaN }, 'out-of-range'],
    ['a place off the deck', { limits: [{ name: 'x', atShare: 1.2, mostIn: 0.1 }] }, 'out-of-range'],
    ['a limit that is no number', { limits: [{ name: 'x', atShare: 1, mostIn: NaN }] }, 'out-of-range'],
    ['six degrees', { largestAngleDeg: 6 }, 'out-of-range'],
  ])('refuses %s', (_, more, code) => {
    expect(targetLine({ ...base, ...more })).toMatchObject({ refusal: { code } })
  })
})
