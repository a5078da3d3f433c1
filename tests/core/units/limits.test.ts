import { describe, expect, it } from 'vitest'
import { castingFigureKeys, castingFigures, type CastingFacts, type CastingFigureKey } from '@/lib/core/casting/figures'
import { draftedVolume } from '@/lib/core/cut/drafted-volume'
import { checkPlanFacts } from '@/lib/core/cut/plan-facts'
import type { CutLimits, HeadNow, PlanInput } from '@/lib/core/cut/plan-types'
import { sinkVolumeCc } from '@/lib/core/cut/volume'
import { flatDeckAfter } from '@/lib/core/flat-deck/after-cut'
import { convertFlow } from '@/lib/core/flow/pressure'
import { powerEstimateHp } from '@/lib/core/flow/power-estimate'
import { engineFigureKeys, engineFigures, type EngineFacts, type EngineFigureKey } from '@/lib/core/engine/figures'
import type { Result } from '@/lib/core/errors'
import { consequences } from '@/lib/core/options/consequences'
import { priorRate } from '@/lib/core/rate/rate'
import { chamberMean } from '@/lib/core/chamber/burette'
import { seatWorkCc } from '@/lib/core/cut/seat-work'
import type { CornerInset } from '@/lib/core/straightness/corner-inset'
import { cornersFit } from '@/lib/core/straightness/corners-fit'
import { planeFit } from '@/lib/core/straightness/plane-fit'
import { parseFigure } from '@/lib/core/units/parse-figure'
import { landOf } from '@/lib/core/options/inputs-of'
import { quantities, type Quantity } from '@/lib/core/units/quantities'

/** A small wedge head and its engine, invented; every figure inside its limits. */
const casting: CastingFacts = {
  milledWidthIn: 7,
  intakeValveIn: 2.02,
  exhaustValveIn: 1.6,
  intakeValveAngleDeg: 23,
  exhaustValveAngleDeg: 23,
  intakeValveXIn: 4,
  exhaustValveXIn: 3,
  intakeValveZIn: 0.4,
  exhaustValveZIn: 0.4,
  intakeValveCantDeg: 0,
  exhaustValveCantDeg: 0,
  intakeSealingIn: 1.98,
  intakeTopCutIn: 2.02,
  intakeTopCutOffsetIn: 0.02,
  intakeInsertIn: 2.1,
  intakeInsertOffsetIn: 0.03,
  intakeSeatDepthIn: 0.2,
  exhaustSealingIn: 1.56,
  exhaustTopCutIn: 1.6,
  exhaustTopCutOffsetIn: 0.02,
  exhaustInsertIn: 1.7,
  exhaustInsertOffsetIn: 0.03,
  exhaustSeatDepthIn: 0.2,
  intakeFaceDeg: 10,
  faceHeightIn: 3,
  portXIn: 0.5,
  portZIn: 1.5,
  dowelXIn: 2,
  dowelDepthIn: 0.3,
  boltHoleIn: 0.5,
  boltIn: 0.4375,
  boltHoleLengthIn: 3.5,
  spotFaceIn: 0.875,
  threadLeftIn: 0.3,
  rockerXIn: 4,
  rockerZIn: 4,
  camXIn: 4,
  camZIn: 5,
}
const engine: EngineFacts = {
  layout: 'v',
  camInHead: true,
  boreIn: 4,
  strokeIn: 3.48,
  bankAngleDeg: 90,
  gasketBoreIn: 4.1,
  gasketThicknessIn: 0.04,
  deckClearanceIn: 0.025,
  pistonDishCc: 5,
  pistonDomeCc: 0,
  intakeLiftIn: 0.5,
  exhaustLiftIn: 0.5,
  intakePtvIn: 0.1,
  exhaustPtvIn: 0.1,
}

/** Everything that is worked out for a cut of one casting on one engine. */
function worked(casting: CastingFacts, engine: EngineFacts, angleIn = 0.06): Result<unknown>[] {
  const found = consequences({
    cut: { flatIn: 0, angleIn, milledWidthIn: casting.milledWidthIn },
    casting,
    engine,
    deepEdge: 'exhaust',
    beforeCc: 64,
    finishedCc: 60,
    sinkIn: 0,
    heads: [{ tag: 'T-0001', chambersCc: [], thicknessIn: null, removedBeforeIn: 0 }],
  })
  const { intake, exhaust, ...rest } = found
  const all: (Result<unknown> | null)[] = [...Object.values(intake), ...Object.values(exhaust), ...Object.values(rest)]
  return all.filter((one) => one !== null)
}

const square = [
  { xIn: 3, yIn: 0 },
  { xIn: 5, yIn: 0 },
  { xIn: 5, yIn: 2 },
  { xIn: 3, yIn: 2 },
]
const plan: PlanInput = {
  kind: 'angle-flat',
  heads: [{ tag: 'T-1', chambersCc: [64], thicknessIn: 4.5, removedBeforeIn: 0 }],
  targetCc: 60,
  toleranceCc: 0.5,
  seatWorkGivesCc: 0,
  thouPerCc: 6,
  centroidShare: 0.6,
  milledWidthIn: 7,
  split: { by: 'flat', flatIn: 0.005 },
  marginCc: 0,
  stopAtIn: null,
  limits: {
    angleCautionDeg: 5,
    angleLimitDeg: 5,
    thicknessLeastIn: null,
    classFlatOnly: false,
    classMinCc: null,
    classMaxCutIn: null,
  },
}
const limited = (limits: Partial<CutLimits>) => checkPlanFacts({ ...plan, limits: { ...plan.limits, ...limits } })

const valves = { intakeValveIn: 2, exhaustValveIn: 1.6 }
const uncut = { 'intake-1': 4.5, 'exhaust-1': 4.5, 'intake-2': 4.5, 'exhaust-2': 4.5 }
const touched = (inset: CornerInset) =>
  cornersFit({ deepEdge: 'exhaust', milledWidthIn: 7, deckLengthIn: 20, inset }, uncut, uncut)

const flatDeck = (casting: CastingFacts, angleIn = 0) =>
  flatDeckAfter(
    { recessionIn: { '1-intake': 0.04 }, protrusionIn: { '1': 0.06 } },
    casting,
    { flatIn: 0.01, angleIn, milledWidthIn: 20 },
    0,
  )

/** Those that another calculation than the consequences of a cut holds to its limits. */
const elsewhere: Partial<Record<CastingFigureKey, (value: number) => Result<unknown>>> = {
  nominalCc: (cc) => chamberMean([cc], { divisionCc: 0.1, repeatabilityCc: 0.3 }),
  openingAreaIn2: (openingAreaIn2) => priorRate({ kind: 'outline', openingAreaIn2 }),
  perimeterIn: (perimeterIn) => priorRate({ kind: 'perimeter', perimeterIn }),
  thouPerCc: (thouPerCc) => priorRate({ kind: 'none', thouPerCc }),
  wallDraftDeg: (deg) => draftedVolume({ flatIn: 0, angleIn: 0, milledWidthIn: 7 }, square, deg),
  deckLengthIn: (deckLengthIn) =>
    planeFit({
      points: square.map((point, at) => ({ ...point, name: String(at), beforeIn: 4.5, afterIn: 4.5 })),
      milledWidthIn: 7,
      deckLengthIn,
      gaugedSquareTo: 'old-deck',
    }),
  intakeRecessionLeastIn: (intakeRecessionLeastIn) => flatDeck({ intakeRecessionLeastIn }),
  intakeRecessionMostIn: (intakeRecessionMostIn) => flatDeck({ intakeRecessionMostIn }),
  exhaustRecessionLeastIn: (exhaustRecessionLeastIn) => flatDeck({ exhaustRecessionLeastIn }),
  exhaustRecessionMostIn: (exhaustRecessionMostIn) => flatDeck({ exhaustRecessionMostIn }),
  injectorProtrusionLeastIn: (injectorProtrusionLeastIn) => flatDeck({ injectorProtrusionLeastIn }),
  injectorProtrusionMostIn: (injectorProtrusionMostIn) => flatDeck({ injectorProtrusionMostIn }),
  injectorXIn: (injectorXIn) => flatDeck({ injectorXIn, intakeValveXIn: 4 }, 0.01),
  cornerInsetEdgeIn: (edgeIn) => touched({ edgeIn, endIn: 0 }),
  cornerInsetEndIn: (endIn) => touched({ edgeIn: 0, endIn }),
  intakeValves: (intakeValves) => seatWorkCc({ intakeValves, ...valves }, 0.01),
  exhaustValves: (exhaustValves) => seatWorkCc({ exhaustValves, ...valves }, 0.01),
  thicknessNewIn: (thicknessNewIn) => limited({ thicknessNewIn }),
  thicknessLeastIn: (thicknessLeastIn) => limited({ thicknessLeastIn }),
  landNewIn: (newIn) => limited({ land: { newIn, leastIn: 0, atShare: 0 } }),
  landLeastIn: (leastIn) => limited({ land: { newIn: 3, leastIn, atShare: 0 } }),
  // A milled width of 20 in at the most, and a place on it.
  landXIn: (landXIn) => limited({ land: landOf({ landNewIn: 1, landLeastIn: 0, landXIn, milledWidthIn: 20 }) }),
  largestAngleDeg: (angleLimitDeg) => limited({ angleLimitDeg }),
  // The milled width goes with it: 2 % of the narrowest deck, 98 % of the widest.
  openingCentreIn: (centreIn) =>
    checkPlanFacts({ ...plan, centroidShare: Number((centreIn / (centreIn < 1 ? 1 : 20)).toPrecision(9)) }),
  // A cut of 60 thou over an inch is steeper than a deck is ever cut.
  milledWidthIn: (milledWidthIn) => worked({ ...casting, milledWidthIn }, engine, 0.05).find(outOfRange) ?? settled,
}
const noCalculation: readonly CastingFigureKey[] = ['boltCount']

const settled: Result<unknown> = { ok: true, value: null }
const outOfRange = (result: Result<unknown>): boolean => !result.ok && result.refusal.code === 'out-of-range'
const impossible = (result: Result<unknown>, value: number): boolean =>
  !result.ok && result.refusal.code === 'out-of-range' && result.refusal.message.includes(`${value} is not between`)

const enginesOwn: Partial<Record<EngineFigureKey, (value: number) => Result<unknown>>> = {
  cylinders: (cylinders) => powerEstimateHp(200, 28, cylinders),
}

/** Both ends, and a thousandth beyond each. */
function ends(quantity: Quantity) {
  const { least, most, whole } = quantities[quantity]
  const past = whole ? 1 : 0.001
  return { inside: [least, most], beyond: [least - past, most + past] }
}
const typed = (value: number, quantity: Quantity) => parseFigure(`${value} ${quantities[quantity].unit}`, quantity).ok

describe('what is accepted at entry is accepted by the calculation, and no more', () => {
  const castings = castingFigureKeys.filter((key) => !noCalculation.includes(key))
  it.each(castings.map((key) => [key, castingFigures[key].quantity] as const))('casting: %s (%s)', (key, quantity) => {
    const calculate = (value: number): Result<unknown> =>
      elsewhere[key]?.(value) ??
      worked({ ...casting, [key]: value }, engine).find((one) => impossible(one, value)) ??
      settled
    check(quantity, calculate)
  })

  it.each(engineFigureKeys.map((key) => [key, engineFigures[key].quantity] as const))(
    'engine: %s (%s)',
    (key, quantity) => {
      const calculate = (value: number): Result<unknown> =>
        enginesOwn[key]?.(value) ??
        worked(casting, { ...engine, [key]: value }).find((one) => impossible(one, value)) ??
        settled
      check(quantity, calculate)
    },
  )

  it('the figures of the record that is tried are all possible', () => {
    expect(worked(casting, engine).filter(outOfRange)).toEqual([])
  })
})

function check(quantity: Quantity, calculate: (value: number) => Result<unknown>): void {
  const { inside, beyond } = ends(quantity)
  for (const value of inside) {
    expect([value, typed(value, quantity)]).toEqual([value, true])
    expect([value, outOfRange(calculate(value))]).toEqual([value, false])
  }
  for (const value of beyond) {
    expect([value, typed(value, quantity)]).toEqual([value, false])
    expect([value, outOfRange(calculate(value))]).toEqual([value, true])
  }
}

describe('what is typed for a plan or at a bench has the limits of its calculation too', () => {
  const head = (more: Partial<HeadNow>) =>
    checkPlanFacts({ ...plan, heads: plan.heads.map((one) => ({ ...one, ...more })) })
  const held: readonly (readonly [string, Quantity, (value: number) => Result<unknown>])[] = [
    ['target', 'chamberVolume', (targetCc) => checkPlanFacts({ ...plan, targetCc })],
    ['chamber now', 'chamberVolume', (cc) => head({ chambersCc: [cc] })],
    ['gone before', 'removed', (removedBeforeIn) => head({ removedBeforeIn })],
    ['stop-at', 'stopAt', (stopAtIn) => checkPlanFacts({ ...plan, stopAtIn })],
    ['smallest of the class', 'chamberVolume', (classMinCc) => limited({ classMinCc })],
    ['deepest of the class', 'cutDepth', (classMaxCutIn) => limited({ classMaxCutIn })],
    ['sink', 'sink', (sinkIn) => sinkVolumeCc(2, sinkIn)],
    ['flow', 'flow', (flowCfm) => convertFlow(flowCfm, 28, 28)],
    ['test pressure', 'testPressure', (pressure) => convertFlow(100, pressure, 28)],
  ]
  it.each(held)('%s', (_, quantity, calculate) => check(quantity, calculate))
})
