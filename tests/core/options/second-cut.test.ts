import { describe, expect, it } from 'vitest'
import type { CastingFacts } from '@/lib/core/casting/figures'
import { landLeftIn } from '@/lib/core/cut/plan-limits'
import { makePlan } from '@/lib/core/cut/plan'
import type { HeadNow, PlanInput } from '@/lib/core/cut/plan-types'
import { thicknessLeftIn } from '@/lib/core/cut/plan-volumes'
import { must } from '@/lib/core/errors'
import type { Gone } from '@/lib/core/head-now/gone'
import { consequences } from '@/lib/core/options/consequences'
import { cutCautions } from '@/lib/core/options/cut-cautions'
import { castingAsItIs } from '@/lib/core/options/drawn-casting'
import { groundWords } from '@/lib/core/options/ground-words'
import { cutCautionText } from '@/lib/words/cut-cautions'
import { lineOf } from '@/lib/core/options/line-of'

const casting: CastingFacts = {
  milledWidthIn: 6,
  thicknessNewIn: 4.25,
  exhaustValveAngleDeg: 0,
  exhaustValveXIn: 3,
  exhaustValveZIn: 0.2,
  exhaustSealingIn: 1.6,
  exhaustTopCutIn: 1.6,
  exhaustTopCutOffsetIn: 0,
  exhaustSeatDepthIn: 0.1292,
  boltHoleIn: 0.5,
  boltIn: 0.4375,
  boltHoleLengthIn: 3.6,
  spotFaceIn: 0.875,
  threadLeftIn: 0.2,
  dowelDepthIn: 0.1,
  dowelXIn: 1.5,
  openingCentreIn: 3,
}
const gone = (atIntakeEdgeIn: number, atExhaustEdgeIn: number): Gone => ({
  atIntakeEdgeIn,
  atExhaustEdgeIn,
  taperIn: 0,
})
const head = (of: Gone | null, more: Partial<HeadNow> = {}): HeadNow => ({
  tag: 'T-0001',
  chambersCc: [64],
  thicknessIn: null,
  metalGone: of && { gone: of, by: 'corners', takenAsFlat: false, differs: null },
  ...more,
})
const after = (
  heads: readonly HeadNow[],
  cut = { flatIn: 0.01, angleIn: 0 },
  deepEdge: 'intake' | 'exhaust' = 'exhaust',
) =>
  consequences({
    cut: { ...cut, milledWidthIn: 6 },
    casting,
    engine: { layout: 'unknown', camInHead: null },
    deepEdge,
    beforeCc: null,
    finishedCc: null,
    sinkIn: 0,
    heads,
  })
const least = { ptvLeastIn: { intake: 0.08, exhaust: 0.1 }, sealingMarginIn: 0.005 }

describe('what follows from a second cut', () => {
  it('0.140 gone: the deck is 10.8 thou through the seat already, and the word is hold', () => {
    const follows = after([head(gone(0.14, 0.14))])
    const sealing = must(follows.exhaust.sealing)
    expect(sealing.beforeIn).toBeCloseTo(-0.0108, 12)
    expect(sealing.marginIn).toBeCloseTo(-0.0208, 12)
    expect(sealing.hold).toBe(true)
    const said = cutCautions(follows, least).map(cutCautionText)
    expect(said.join('\n')).toMatch(/^Stop: .* exhaust seat, by 10\.8 thou.*Hold the head/m)
  })

  it('of two heads the one that comes off worst is said, with its name', () => {
    const follows = after([head(gone(0.02, 0.02)), head(gone(0.05, 0.05), { tag: 'T-0002' })])
    expect(must(follows.exhaust.sealing)).toMatchObject({ tag: 'T-0002', notKnownOf: [] })
    expect(must(follows.exhaust.sealing).marginIn).toBeCloseTo(0.1292 - 0.06, 12)
    // 0.050 + 0.010 gone of 0.200 of thread, 0.100 of dowel hole.
    expect(must(follows.boltReach)).toMatchObject({ tag: 'T-0002' })
    expect(must(follows.boltReach).leftIn).toBeCloseTo(0.14, 12)
    expect(must(follows.dowelFit).leftIn).toBeCloseTo(0.04, 12)
  })

  it('a head of which nothing is known is named beside the other’s figure; alone it says what it needs', () => {
    const unknown = head(null, { tag: 'T-0002' })
    const both = must(after([head(gone(0.02, 0.02)), unknown]).exhaust.sealing)
    expect(both).toMatchObject({ tag: 'T-0001', notKnownOf: ['T-0002'] })
    expect(groundWords(both)).toBe('record less what is removed; T-0001 only: not known of T-0002')
    expect(after([unknown]).exhaust.sealing).toMatchObject({
      ok: false,
      refusal: { needs: ['seatReading', 'thicknessNewIn', 'removedBeforeIn'] },
    })
    const read = { ...unknown, seatReadings: [{ valve: '1-exhaust', depthFromDeckNowIn: 0.1 }], chambers: 4 }
    const known = must(after([read]).exhaust.sealing)
    expect(known.marginIn).toBeCloseTo(0.09, 12)
    expect(groundWords(known)).toBe('read on this head, chamber 1 exhaust; 3 not read, taken like it')
  })

  it('dowels lose what is gone at their own place: 0.060 at the exhaust edge is 0.015 at a quarter of the width', () => {
    expect(must(after([head(gone(0, 0.06))]).dowelFit).deeperIn).toBeCloseTo(0.015 + 0.01, 12)
    // Deep at the intake edge the same place is counted from the other side.
    const mirrored = after([head(gone(0, 0.06))], { flatIn: 0.01, angleIn: 0 }, 'intake')
    expect(must(mirrored.dowelFit).deeperIn).toBeCloseTo(0.045 + 0.01, 12)
  })

  it('bolts lean by the whole of it though this cut is flat: atan(0.06/6)', () => {
    const { leanIn, wholeLean } = must(after([head(gone(0, 0.06))]).boltHole)
    expect(wholeLean).toBe(true)
    expect(leanIn).toBeCloseTo((3.6 - 0.01) * Math.sin(Math.atan(0.01)), 12)
    expect(must(after([head(gone(0, 0.06))]).spotFaceIn)).toBeCloseTo(0.875 * 0.01, 12)
    expect(must(after([head(null)]).boltHole).wholeLean).toBe(false)
  })

  it('the section is drawn as the head is: its seat as far off as it is now', () => {
    const drawn = castingAsItIs([head(gone(0.02, 0.02))], casting, 'exhaust')
    expect(drawn.exhaustSeatDepthIn).toBeCloseTo(0.1092, 12)
    expect(drawn.exhaustValveZIn).toBeCloseTo(0.18, 12)
    expect(castingAsItIs([head(null)], casting, 'exhaust').exhaustSeatDepthIn).toBeUndefined()
  })
})

const plan = (heads: readonly HeadNow[], more: Partial<PlanInput> = {}): PlanInput => ({
  kind: 'flat',
  heads,
  targetCc: 60,
  toleranceCc: 0.5,
  seatWorkGivesCc: 0,
  thouPerCc: 6,
  centroidShare: 0.5,
  milledWidthIn: 6,
  split: { by: 'margin' },
  marginCc: 1,
  stopAtIn: null,
  limits: {
    angleCautionDeg: 0.5,
    angleLimitDeg: 1,
    thicknessNewIn: 4.25,
    thicknessLeastIn: null,
    land: { newIn: 0.4, leastIn: 0.3, atShare: 0.25 },
    classFlatOnly: false,
    classMinCc: null,
    classMaxCutIn: null,
  },
  ...more,
})

describe('limits of a second cut', () => {
  it('land at a quarter of the width: 0.400 less 0.015 gone there and 0.024 of this cut', () => {
    const leaning = head(gone(0, 0.06))
    expect(landLeftIn(plan([leaning]), leaning, { flatIn: 0.024, angleIn: 0 })).toBeCloseTo(0.361, 12)
    const mirrored = plan([leaning], { deepEdge: 'intake' })
    // Counted from the exhaust edge, which is the shallow one now: 0.045 gone there.
    expect(landLeftIn(mirrored, leaning, { flatIn: 0.024, angleIn: 0 })).toBeCloseTo(0.331, 12)
  })

  it('a record that does not say where the land lies is asked for it as soon as the deck leans', () => {
    const limits = { ...plan([]).limits, land: { newIn: 0.4, leastIn: 0.3, atShare: null } }
    const flat = must(makePlan(plan([head(gone(0.02, 0.02))], { limits })))
    expect(flat.cautions).not.toContainEqual({ code: 'land-place-not-known' })
    const leaning = must(makePlan(plan([head(gone(0, 0.06))], { limits })))
    expect(leaning.cautions).toContainEqual({ code: 'land-place-not-known' })
    expect(leaning.needs).toContain('landXIn')
  })

  it('thickness is held at each edge: deep at the thicker one it may go further', () => {
    const corners = head(gone(0.01, 0.07), { thicknessIn: 4.18, edgeThicknessIn: { intake: 4.24, exhaust: 4.18 } })
    expect(thicknessLeftIn(corners, { flatIn: 0.02, angleIn: 0.063 }, 'intake')).toBeCloseTo(4.157, 12)
    expect(thicknessLeftIn(corners, { flatIn: 0.02, angleIn: 0.063 }, 'exhaust')).toBeCloseTo(4.097, 12)
    expect(thicknessLeftIn(head(null), { flatIn: 0.02, angleIn: 0 }, 'exhaust')).toBeNull()
  })

  it('removed since new is counted where both cuts together are deepest: 0.060 here, 0.024 + 0.010 there', () => {
    const { totalRemovedIn } = must(makePlan(plan([head(gone(0.01, 0.06))])))
    expect(totalRemovedIn).toBeCloseTo(0.084, 12)
    const other = must(makePlan(plan([head(gone(0.06, 0.01))], { kind: 'angle', centroidShare: 0.5 })))
    // All angle: 0.024/0.5 = 0.048 at the exhaust edge, 0.058 there in all; 0.060 at the intake edge.
    expect(other.totalRemovedIn).toBeCloseTo(0.06, 12)
  })

  it('the line stops where the seat of the head as it is now stops it', () => {
    const of = (heads: readonly HeadNow[]) =>
      must(
        lineOf({
          depthIn: 0.03,
          casting: { ...casting, openingCentreIn: 1.5 },
          heads,
          deepEdge: 'exhaust',
          limits: { ...plan([]).limits, land: null, angleLimitDeg: 5 },
          sealingMarginIn: 0.005,
        }),
      )
    // Far rim of the upright seat at x 3.8: 0.1292 − 0.005 less 0.060 gone; (0.0642 − 0.030)/(3.8/6 − 0.25).
    expect(of([head(gone(0.06, 0.06))]).to).toMatchObject({ boundBy: 'sealing margin of the exhaust seat' })
    expect(of([head(gone(0.06, 0.06))]).to.angleIn).toBeCloseTo((0.0642 - 0.03) / (3.8 / 6 - 0.25), 9)
    expect(of([head(gone(0, 0))]).to.angleIn).toBeGreaterThan(0.1)
  })
})
