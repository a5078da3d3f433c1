import { describe, expect, it } from 'vitest'
import { castingFigures, type CastingFacts, type CastingFigureKey } from '@/lib/core/casting/figures'
import { engineFigures, type EngineFacts } from '@/lib/core/engine/figures'
import { consequenceLines } from '@/lib/core/options/consequence-lines'
import { consequences } from '@/lib/core/options/consequences'
import type { ConsequencesInput } from '@/lib/core/options/consequences-input'
import { figureName } from '@/lib/core/options/figure-names'
import type { Result } from '@/lib/core/errors'

const value = <T>(result: Result<T>): T => {
  if (result.ok) return result.value
  throw new Error(result.refusal.message)
}

/** Invented, but for what it must be to be a head. */
const casting: CastingFacts = {
  milledWidthIn: 7,
  intakeValveIn: 2,
  exhaustValveIn: 1.6,
  intakeValveAngleDeg: 23,
  exhaustValveAngleDeg: -12,
  intakeValveXIn: 3.5,
  exhaustValveXIn: 3.7,
  intakeValveZIn: 0.5,
  exhaustValveZIn: 0.45,
  intakeSealingIn: 1.99,
  intakeTopCutIn: 2.06,
  intakeTopCutOffsetIn: 0.02,
  intakeInsertIn: 2.1,
  intakeInsertOffsetIn: 0.03,
  intakeSeatDepthIn: 0.04,
  exhaustSealingIn: 1.59,
  exhaustTopCutIn: 1.66,
  exhaustTopCutOffsetIn: 0.02,
  exhaustInsertIn: 1.7,
  exhaustInsertOffsetIn: 0.03,
  exhaustSeatDepthIn: 0.06,
  boltHoleIn: 0.5,
  boltIn: 0.4375,
  boltHoleLengthIn: 3.52,
  spotFaceIn: 0.875,
  threadLeftIn: 0.12,
  dowelDepthIn: 0.1,
  dowelXIn: 0.8,
  rockerXIn: 3.4,
  rockerZIn: 4.4,
  intakeFaceDeg: 0,
  portXIn: 0.2,
  portZIn: 2.1,
  faceHeightIn: 2.5,
}
const engine: EngineFacts = {
  layout: 'v',
  camInHead: null,
  bankAngleDeg: 90,
  boreIn: 4,
  strokeIn: 3.48,
  gasketBoreIn: 4,
  gasketThicknessIn: 0.02,
  deckClearanceIn: 0.05,
  pistonDishCc: 5,
  intakeLiftIn: 0.3,
  exhaustLiftIn: 0.3,
  intakePtvIn: 0.1,
}
const neverCut = [{ tag: 'T-0001', chambersCc: [], thicknessIn: null, removedBeforeIn: 0 }]
const tan1 = Math.tan(Math.PI / 180)

const of = (more: Partial<ConsequencesInput> = {}) =>
  consequences({
    cut: { flatIn: 0.02, angleIn: 7 * tan1, milledWidthIn: 7 },
    casting,
    engine,
    deepEdge: 'exhaust',
    beforeCc: 75,
    finishedCc: 70,
    sinkIn: 0,
    heads: neverCut,
    ...more,
  })

describe('what follows from a cut', () => {
  it('compression by Circle Track, May 2004: 70 cc, 5 cc dish, 0.050 deck, 0.020 gasket → 9.01', () => {
    expect(value(of().ratioAfter)).toBeCloseTo(9.01, 1)
    expect(Math.abs(value(of().ratioAfter) - 9.01)).toBeLessThanOrEqual(0.02)
  })

  it('one degree: valves turn by it, toward the deep edge down, toward the shallow edge up', () => {
    expect(value(of().intake.angleAfterDeg)).toBeCloseTo(22, 9)
    expect(value(of().exhaust.angleAfterDeg)).toBeCloseTo(-13, 9)
  })

  it('bolt hole of 3.52 in with 20 thou flat off: 3.5·sin 1° = 0.0611, less (0.500 − 0.4375)/2 → slot 0.0298', () => {
    expect(value(of().boltHole).leanIn).toBeCloseTo(0.0611, 4)
    expect(value(of().boltHole).slotIn).toBeCloseTo(0.0611 - 0.03125, 4)
    expect(value(of().spotFaceIn)).toBeCloseTo(0.0153, 4)
  })

  it('reach of a flat cut of 0.020 where 0.063 was gone: 0.120 − 0.083 of thread, 0.100 − 0.083 under the dowels', () => {
    const again = of({
      cut: { flatIn: 0.02, angleIn: 0, milledWidthIn: 7 },
      heads: [{ tag: 'T-0001', chambersCc: [], thicknessIn: null, removedBeforeIn: 0.063 }],
    })
    expect(value(again.boltReach).leftIn).toBeCloseTo(0.037, 9)
    expect(value(again.dowelFit).leftIn).toBeCloseTo(0.017, 9)
  })

  it('reach of one degree and 0.020: 0.1422 at the deepest and a spot face of 0.0153; dowels lose 0.020 + 0.8·tan 1°', () => {
    const first = of({ casting: { ...casting, threadLeftIn: 0.25 } })
    expect(value(first.boltReach).leftIn).toBeCloseTo(0.25 - 0.1422 - 0.0153, 4)
    expect(value(first.dowelFit).leftIn).toBeCloseTo(0.1 - 0.02 - 0.8 * tan1, 9)
  })

  it('a flat cut takes its own depth from every clearance, and turns nothing', () => {
    const flat = of({ cut: { flatIn: 0.03, angleIn: 0, milledWidthIn: 7 } })
    for (const port of ['intake', 'exhaust'] as const) {
      expect(value(flat[port].pistonToValve).lossIn).toBeCloseTo(0.03, 12)
      // Gauged to the top cut; the sealing circle lies on the valve's axis, farther in by the offset.
      expect(value(flat[port].sealing).marginIn).toBeGreaterThan(0)
    }
    expect(value(flat.intake.pistonToValve).remainingIn).toBeCloseTo(0.07, 12)
    expect(value(flat.boltHole).slotIn).toBe(0)
    expect(value(flat.rocker).pushrodLongerIn).toBeCloseTo(0.03, 12)
    expect(value(flat.intakeSide)).toMatchObject({
      sideIn: expect.closeTo(0.03, 9),
      railsIn: expect.closeTo(0.0424, 4),
    })
  })

  it('a flat cut to the centre of the top-cut circle takes half of it', () => {
    // Nearest point at 0.040, radius 1.03 leaning 23°: the centre is 1.03·sin 23° farther up.
    const flatIn = 0.04 + 1.03 * Math.sin((23 * Math.PI) / 180)
    const half = of({ cut: { flatIn, angleIn: 0, milledWidthIn: 7 } })
    expect(value(half.intake.topCut).lostShare).toBeCloseTo(0.5, 9)
  })

  it('the cam is spoken of only when it is in the head', () => {
    expect(of().cam).toBeNull()
    const inHead = of({
      engine: { ...engine, camInHead: true },
      cut: { flatIn: 0.03, angleIn: 0, milledWidthIn: 7 },
    })
    expect(inHead.cam && value(inHead.cam).slackIn).toBeCloseTo(0.06, 12)
  })
})

describe('what is not known', () => {
  const words = (input: ConsequencesInput) =>
    consequenceLines({
      cut: input.cut,
      deepEdge: input.deepEdge,
      follows: consequences(input),
      ptvLeastIn: { intake: 0.08, exhaust: 0.1 },
      sealingMarginIn: 0.005,
    }).flatMap(({ lines }) => lines)

  const bare: ConsequencesInput = {
    cut: { flatIn: 0.02, angleIn: 0.063, milledWidthIn: 7 },
    casting: {},
    engine: { layout: 'v', camInHead: true },
    deepEdge: 'exhaust',
    beforeCc: 70,
    finishedCc: 65,
    sinkIn: 0.01,
    heads: neverCut,
  }

  it('is named by the records’ own figures, and those are enough: filled in, nothing is asked for any more', () => {
    let input = bare
    for (let round = 0; round < 5; round++) {
      const needs = [...new Set(words(input).flatMap((line) => line.needs))]
      if (needs.length === 0) break
      for (const key of needs) {
        expect(figureName(key), key).not.toBe(key)
        input = given(input, key)
      }
    }
    const lines = words(input)
    expect(lines.flatMap((line) => line.needs)).toEqual([])
    expect(lines.filter((line) => line.value === '')).toEqual([])
  })

  it('leaves the rest standing: the drop of a flat cut needs nothing of the valve', () => {
    const flat = words({ ...bare, cut: { flatIn: 0.02, angleIn: 0, milledWidthIn: null }, sinkIn: 0 })
    expect(flat.find(({ label }) => label === 'Piston to intake valve')?.value).toBe('loses 20 thou')
    expect(flat.find(({ label }) => label === 'Intake valve angle')?.needs).toEqual(['intakeValveAngleDeg'])
  })

  it('asks for the layout before it speaks of the intake side', () => {
    const side = words({ ...bare, engine: { layout: 'unknown', camInHead: null } }).find(({ label }) =>
      label.startsWith('Off the intake side'),
    )
    expect(side?.needs).toEqual(['layout'])
  })
})

/** Something possible for each figure, whatever it is: what it makes of the answer is not looked at here. */
function given(input: ConsequencesInput, key: string): ConsequencesInput {
  if (key in castingFigures) {
    const figure = casting[key as CastingFigureKey] ?? 1
    return { ...input, casting: { ...input.casting, [key]: figure } }
  }
  if (key in engineFigures)
    return { ...input, engine: { ...engine, ...input.engine, [key]: engine[key as 'boreIn'] ?? 0.1 } }
  throw new Error(`${key} stands in no record`)
}
