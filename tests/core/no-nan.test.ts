import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import fc, { type Arbitrary } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chamberMean, headCc, type ChamberMean } from '@/lib/core/chamber/burette'
import { matchChambers } from '@/lib/core/chamber/match'
import { boltHoleSlot, spotFaceDepth } from '@/lib/core/clearance/bolt-hole'
import { boltReach, dowelFit } from '@/lib/core/clearance/bolt-reach'
import { pistonToValve, valveAngleAfter } from '@/lib/core/clearance/piston-to-valve'
import { camDrop, installedHeightGrowth, pointDrop, rockerDrop } from '@/lib/core/clearance/point-drop'
import { heightOver, motionOf, movedPoint, moveOf, type Motion } from '@/lib/core/clearance/rigid-motion'
import { axisAfter, sectionAngleDeg, tiltOf, valveAxis } from '@/lib/core/clearance/valve-axis'
import { chamberForRatio, compressionRatio, cylinderVolumes, ratioPerCc } from '@/lib/core/compression/ratio'
import { angleGivenIn, cutAngleDeg, edgeDepthIn } from '@/lib/core/cut/angle'
import { circleOpening, circleOutline } from '@/lib/core/cut/circle'
import { depthAt } from '@/lib/core/cut/depth-at'
import { draftedVolume } from '@/lib/core/cut/drafted-volume'
import { angleForVolume, flatAtAngle, flatForVolume } from '@/lib/core/cut/inverse'
import { checkOutline, crossingEdges, openingOfOutline, outlinePerimeterIn, signedArea } from '@/lib/core/cut/outline'
import { parseOutline, tracedOpening } from '@/lib/core/cut/outline-text'
import { makePlan, type PlanInput } from '@/lib/core/cut/plan'
import { checkPlanFacts } from '@/lib/core/cut/plan-facts'
import { governingWords, unevenCaution } from '@/lib/core/cut/plan-governing'
import { partsFor } from '@/lib/core/cut/plan-depths'
import { limitCautions, refuseBroken, removedBefore, totalRemoved } from '@/lib/core/cut/plan-limits'
import { allChambers, headsAfter, outOfTolerance } from '@/lib/core/cut/plan-volumes'
import { angleBeside, centroidShareOf, depthAtCentroid, flatBeside, shareFact, type Parts } from '@/lib/core/cut/split'
import { targetLine } from '@/lib/core/cut/target-line'
import { seatWorkCc } from '@/lib/core/cut/seat-work'
import { cutVolumeCc, sinkVolumeCc } from '@/lib/core/cut/volume'
import { airDensityKgM3, densityLbFt3FromKgM3 } from '@/lib/core/flow/air-density'
import { compareFlow, taken } from '@/lib/core/flow/compare'
import { flowAt, meanFlow, monotoneCurve, repeatedLift, type FlowCurve } from '@/lib/core/flow/curve'
import { dischargeCoefficients } from '@/lib/core/flow/discharge'
import { exhaustToIntake } from '@/lib/core/flow/exhaust-to-intake'
import { likeForLike } from '@/lib/core/flow/like-for-like'
import { checkLimits } from '@/lib/core/flow/limits'
import { powerEstimateHp } from '@/lib/core/flow/power-estimate'
import { convertFlow, correctForLeak } from '@/lib/core/flow/pressure'
import { repeatabilityOf } from '@/lib/core/flow/repeatability'
import { correctedPoints } from '@/lib/core/flow/run'
import { idealFlowCfmPerIn2, idealVelocityFps, meanVelocityFps } from '@/lib/core/flow/velocity'
import { inlineIntake } from '@/lib/core/intake/inline'
import { faceAngleFromManifold, vIntake } from '@/lib/core/intake/v-engine'
import { cutsLikeDepth, learnRate } from '@/lib/core/rate/learn'
import { advisePass } from '@/lib/core/rate/next-pass'
import { priorRate, rateForHead, thouPerCc, type Rate } from '@/lib/core/rate/rate'
import { rateOfRecord } from '@/lib/core/rate/rate-of-record'
import { insertMarks, sealingMargin, topCutLoss } from '@/lib/core/seat/after-cut'
import { circleOver, placeCircle, shareBelow, type PlacedCircle } from '@/lib/core/seat/circles'
import { cornerPoint } from '@/lib/core/straightness/corner-point'
import { leastSquaresPlane } from '@/lib/core/straightness/least-squares-plane'
import { planeFit } from '@/lib/core/straightness/plane-fit'
import { judgeStraightness } from '@/lib/core/straightness/straightness'
import { fromCore, toCore, unitNamed } from '@/lib/core/units/convert'
import { factOf } from '@/lib/core/units/fact-of'
import { formatBare, formatFigure, formatThou, withUnit } from '@/lib/core/units/format-figure'
import { parseFigure } from '@/lib/core/units/parse-figure'
import { quantityNames } from '@/lib/core/units/quantities'
import { isMeasurable } from '@/lib/core/units/least-measured'
import { readNumber } from '@/lib/core/units/read-number'
import { typedFigure } from '@/lib/core/units/typed-figure'
import { unitTyped } from '@/lib/core/units/unit-typed'
import { must, type Result } from '@/lib/core/errors'
import { finite, maybe, near, perhaps, plain, unsound } from './any-figure'
import { computing, exportedFrom } from './exported'
import { holds } from './holds'
import { meanOrNull } from '@/lib/core/mean'
import { degrees as inDegrees, radians } from '@/lib/core/units/degrees'
import { depthErrorFact, rateFacts, uncertaintyFact } from '@/lib/core/rate/rate-facts'
import { cornersOf } from '@/lib/core/straightness/corners-fit'

/** Only what a calculation before it gives: its refusals are seen at its own place. */
const given = <T>(results: Arbitrary<Result<T>>): Arbitrary<T> => results.filter((result) => result.ok).map(must)

/** There are hundreds of them here: half as many draws each. */
const sound = <A extends unknown[]>(
  fn: (...args: A) => unknown,
  args: { [K in keyof A]: Arbitrary<A[K]> },
  numRuns = 150,
) => holds(fn, args, numRuns)

const quantity = fc.constantFrom(...quantityNames)
const depth = near(0, 0.5)
const width = near(1, 20)
const place = near(-20, 20)
const degrees = near(-60, 60)
const cc = near(1, 400)
const cut = fc.record({ flatIn: near(0, 0.2), angleIn: near(0, 0.2), milledWidthIn: perhaps(near(4, 12)) })
const wideCut = fc.record({ flatIn: near(0, 0.2), angleIn: near(0, 0.2), milledWidthIn: near(4, 12) })
const edge = fc.constantFrom('intake' as const, 'exhaust' as const)
const words = fc.oneof(fc.constantFrom('', 'radius plate', 'none'), fc.string())

describe('units', () => {
  sound(isMeasurable, [near(-1, 1)])
  const typed = fc.oneof(
    fc.string(),
    fc.stringMatching(/^[-+−]?\d{0,6}[.,]?\d{0,6} ?(in|thou|mm|cc|°|')?$/),
    fc.stringMatching(/^\d{1,3}[ -]\d{1,3}\/\d{1,3}$/),
  )
  // What was typed is said back as it was typed, so that it may hold any word at all.
  const harmless = typed.filter((text) => unsound(text) === null)
  const unit = fc.constantFrom('in', 'thou', 'mm', 'cc', 'in³', '°F', 'µm', 'furlong', '')
  const factors = fc.tuple(quantity, unit).map(([of, name]) => unitNamed(of, name) ?? { times: 1, over: 1, zeroAt: 0 })
  sound(parseFigure, [harmless, quantity, unit], 600)
  sound(readNumber, [harmless])
  sound(unitTyped, [harmless, quantity])
  sound(unitNamed, [quantity, unit])
  sound(typedFigure, [fc.record({ text: harmless, unit })])
  sound(toCore, [plain(-100, 100), factors])
  sound(fromCore, [plain(-100, 100), factors])
  sound(formatFigure, [plain(-100, 100), quantity, unit])
  sound(formatBare, [plain(-100, 100), quantity, unit])
  sound(withUnit, [harmless, unit])
  sound(formatThou, [plain(-1, 1)])
  sound(factOf, [harmless, maybe(finite), quantity])
  sound(radians, [plain(-360, 360)])
  sound(inDegrees, [plain(-7, 7)])
})

describe('chamber', () => {
  const burette = fc.record({ divisionCc: near(0, 1), repeatabilityCc: near(0, 1) })
  sound(chamberMean, [fc.array(cc, { maxLength: 6 }), burette])
  const mean: Arbitrary<ChamberMean> = given(
    fc.tuple(fc.array(cc, { minLength: 1, maxLength: 4 }), burette).map(([all, of]) => chamberMean(all, of)),
  )
  sound(headCc, [fc.array(mean, { maxLength: 8 })])
  const chamber = fc.record({ tag: fc.constant('T-0001'), chamber: fc.nat(12), cc })
  sound(matchChambers, [fc.array(chamber, { maxLength: 8 }), near(0, 2)])
})

describe('cut', () => {
  const opening = fc.record({ areaIn2: near(0.5, 40), centreIn: near(0, 12), milledWidthIn: width })
  const share = maybe(near(0, 1))
  const outline = fc.oneof(
    fc.array(fc.record({ xIn: near(0, 12), yIn: near(-20, 20) }), { maxLength: 8 }),
    fc.tuple(near(1, 10), near(0.5, 4)).map(([middle, radius]) =>
      [0, 1, 2, 3, 4, 5, 6].map((turn) => ({
        xIn: middle + radius * Math.cos(turn * 0.9),
        yIn: radius * Math.sin(turn * 0.9),
      })),
    ),
  )
  const split = fc.oneof(
    fc.record({ by: fc.constant('flat' as const), flatIn: depth }),
    fc.record({ by: fc.constant('angle' as const), angleIn: depth }),
    fc.record({ by: fc.constant('degrees' as const), angleDeg: near(0, 5) }),
    fc.constant({ by: 'margin' as const }),
  )
  const head = fc.record({
    tag: fc.constant('T-0001'),
    chambersCc: fc.array(cc, { maxLength: 5 }),
    thicknessIn: maybe(near(0.3, 12)),
    removedBeforeIn: maybe(near(0, 1)),
  })
  const kind = fc.constantFrom('none', 'clean-up', 'flat', 'angle', 'angle-flat') as Arbitrary<PlanInput['kind']>
  const plan: Arbitrary<PlanInput> = fc.record({
    kind,
    heads: fc.array(head, { maxLength: 2 }),
    presentNominal: fc.boolean(),
    targetCc: maybe(near(40, 80)),
    toleranceCc: near(0, 2),
    seatWorkGivesCc: near(0, 2),
    thouPerCc: maybe(near(0.5, 20)),
    centroidShare: share,
    milledWidthIn: maybe(width),
    split,
    marginCc: near(0, 5),
    stopAtIn: maybe(near(0.0005, 0.1)),
    equalise: fc.boolean(),
    limits: fc.record({
      angleCautionDeg: near(0, 5),
      angleLimitDeg: near(0, 5),
      thicknessNewIn: maybe(near(0.3, 12)),
      thicknessLeastIn: maybe(near(0.3, 12)),
      classFlatOnly: fc.boolean(),
      classMinCc: maybe(cc),
      classMaxCutIn: maybe(depth),
    }),
  })
  /** What the parts of a plan are given: an input that has been looked at. */
  const looked = plan.filter((input) => checkPlanFacts(input).ok)
  const removes = maybe(fc.double({ min: 0, max: 400, noNaN: true }))
  const deepest = fc.double({ min: 0, max: 0.5, noNaN: true })
  const parts = fc.record({ flatIn: deepest, angleIn: deepest })
  const answered = looked.map((input) => [input, makePlan(input)] as const).filter(([, answer]) => answer.ok)
  const limit = fc.record({ name: fc.constant('land'), atShare: near(0, 1), mostIn: near(0, 0.2) })

  sound(cutAngleDeg, [depth, perhaps(width)])
  sound(edgeDepthIn, [near(0, 5), perhaps(width)])
  sound(angleGivenIn, [
    fc.record({ angleIn: perhaps(depth), angleDeg: perhaps(near(0, 5)), milledWidthIn: perhaps(width) }),
  ])
  sound(circleOpening, [near(0.8, 7), near(0, 20), width])
  sound(circleOutline, [fc.record({ areaIn2: fc.double({ min: 0.5, max: 40, noNaN: true }), centreIn: plain(0, 20) })])
  sound(depthAt, [cut, place])
  sound(signedArea, [fc.array(fc.record({ xIn: plain(0, 20), yIn: plain(-20, 20) }), { maxLength: 8 })])
  sound(checkOutline, [outline, width])
  sound(openingOfOutline, [outline, width])
  sound(crossingEdges, [fc.array(fc.record({ xIn: plain(0, 20), yIn: plain(-20, 20) }), { maxLength: 8 })])
  sound(outlinePerimeterIn, [fc.array(fc.record({ xIn: plain(0, 20), yIn: plain(-20, 20) }), { maxLength: 8 })])
  // What was typed is said back as it was typed, so that it may hold any word at all.
  const typedPoint = fc.oneof(
    fc.stringMatching(/^\d{0,2}[.,]?\d{0,4}[ ,;\t]{1,2}-?\d{0,2}[.,]?\d{0,4}$/),
    fc.string().filter((typed) => unsound(typed) === null),
  )
  const typedOutline = fc.array(typedPoint, { maxLength: 6 }).map((lines) => lines.join('\n'))
  sound(parseOutline, [typedOutline], 400)
  sound(tracedOpening, [typedOutline, maybe(width)], 400)
  sound(draftedVolume, [wideCut, outline, near(-45, 45)])
  sound(cutVolumeCc, [opening, wideCut])
  sound(sinkVolumeCc, [near(0.3, 5), near(0, 0.25)])
  const valveFigure = (least: number, most: number) => fc.option(near(least, most), { nil: undefined })
  sound(seatWorkCc, [
    fc.record({
      intakeValveIn: valveFigure(0.3, 5),
      exhaustValveIn: valveFigure(0.3, 5),
      intakeValves: valveFigure(1, 3),
      exhaustValves: valveFigure(1, 3),
    }),
    near(0, 0.25),
  ])
  sound(flatForVolume, [near(0, 30), near(0.5, 40)])
  sound(angleForVolume, [near(0, 30), depth, opening])
  sound(flatAtAngle, [near(0, 30), near(0, 5), opening])
  sound(depthAtCentroid, [fc.record({ flatIn: plain(0, 0.5), angleIn: plain(0, 0.5) }), maybe(plain(0, 1))])
  sound(shareFact, [perhaps(finite)])
  sound(centroidShareOf, [fc.record({ openingCentreIn: near(0, 12), milledWidthIn: near(1, 20) })])
  sound(angleBeside, [depth, perhaps(near(0, 1)), depth])
  sound(flatBeside, [depth, perhaps(near(0, 1)), depth])
  sound(targetLine, [
    fc.record({
      depthIn: depth,
      centroidShare: share,
      milledWidthIn: maybe(width),
      largestAngleDeg: maybe(near(0, 5)),
      limits: fc.array(limit, { maxLength: 3 }),
    }),
  ])
  sound(makePlan, [plan], 1000)
  sound(checkPlanFacts, [plan])
  sound(partsFor, [looked, deepest])
  sound(allChambers, [looked])
  sound(meanOrNull, [fc.array(plain(1, 400), { maxLength: 6 })])
  sound(headsAfter, [looked, removes, parts])
  const outAfterCut = (input: PlanInput, removesCc: number | null, cut: Parts) =>
    outOfTolerance(input, headsAfter(input, removesCc, cut))
  sound(outAfterCut, [looked, removes, parts])
  sound(removedBefore, [head, maybe(near(0.3, 12))])
  sound(totalRemoved, [looked, parts])
  sound(limitCautions, [
    looked,
    fc.record({ flatIn: deepest, angleIn: deepest, angleDeg: maybe(near(0, 5)), deepestIn: deepest }),
  ])
  it('refuseBroken, governingWords, unevenCaution', () => {
    fc.assert(
      fc.property(answered, ([input, answer]) => {
        const { value } = answer as { value: Parameters<typeof refuseBroken>[1] }
        expect(unsound(refuseBroken(input, value))).toBeNull()
        expect(unsound(governingWords(input, value.outOfTolerance))).toBeNull()
        expect(unsound(unevenCaution(input, value.outOfTolerance))).toBeNull()
      }),
    )
  })
})

const priorSource = fc.oneof(
  fc.record({ kind: fc.constant('outline' as const), openingAreaIn2: maybe(near(0.5, 40)) }),
  fc.record({ kind: fc.constant('perimeter' as const), perimeterIn: maybe(near(1, 40)) }),
  fc.record({ kind: fc.constant('none' as const), thouPerCc: perhaps(near(0.5, 200)) }),
)
describe('rate', () => {
  const rate: Arbitrary<Rate> = given(priorSource.map(priorRate))
  const anyRate: Arbitrary<Rate> = fc.record({
    ccPerThou: near(1e-6, 1),
    uCcPerThou: near(0, 0.2),
    cuts: fc.nat(9),
    prior: fc.constantFrom('outline', 'perimeter', 'none'),
  })
  const rateCut = fc.record({
    depthThou: near(0.1, 100),
    beforeCc: near(40, 80),
    uBeforeCc: near(0, 1),
    afterCc: near(40, 80),
    uAfterCc: near(0, 1),
    likeForLike: fc.boolean(),
  })
  const smallest = fc.record({ cc: near(40, 80), uCc: near(0, 1), classMinimumCc: near(40, 80) })
  sound(priorRate, [priorSource])
  sound(uncertaintyFact, [fc.constant('a'), plain(0, 20)])
  sound(depthErrorFact, [plain(0, 20)])
  sound(rateFacts, [rate])
  sound(rateForHead, [rate, fc.double({ min: 0, max: 1, noNaN: true })])
  sound(thouPerCc, [rate])
  sound(rateOfRecord, [
    fc.record(
      { openingAreaIn2: near(0.5, 40), perimeterIn: near(1, 40), thouPerCc: near(1, 200) },
      { requiredKeys: [] },
    ),
  ])
  sound(learnRate, [fc.oneof(rate, anyRate), fc.array(rateCut, { maxLength: 4 }), near(0, 2)], 400)
  sound(cutsLikeDepth, [fc.array(rateCut, { maxLength: 4 }), near(0.1, 500)])
  sound(
    advisePass,
    [
      fc.record({
        presentCc: near(40, 80),
        uPresentCc: near(0, 0.5),
        targetCc: near(40, 80),
        toleranceCc: near(0.01, 3),
        rate: fc.oneof(rate, anyRate),
        depthErrorThou: near(0, 2),
        smallest: fc.option(smallest),
      }),
    ],
    1000,
  )
})

const motion: Arbitrary<Motion> = given(wideCut.map(motionOf))
const point = fc.record({ xIn: plain(-20, 20), zIn: plain(-20, 20) })
describe('clearance', () => {
  const axis = fc.tuple(fc.double({ min: -60, max: 60, noNaN: true }), fc.double({ min: -60, max: 60, noNaN: true }))
  const placed = fc.record({ xIn: perhaps(place), zIn: perhaps(place) })
  const dowel = perhaps(place)
  const valve = fc.record({
    xIn: perhaps(place),
    zIn: perhaps(place),
    diameterIn: perhaps(near(0.3, 5)),
    valveAngleDeg: perhaps(degrees),
    cantDeg: degrees,
  })
  sound(motionOf, [cut])
  sound(heightOver, [motion, point])
  sound(movedPoint, [motion, plain(-20, 20), point])
  sound(moveOf, [motion, point, perhaps(plain(-20, 20))])
  sound(valveAxis, [plain(-60, 60), plain(-60, 60)])
  sound(axisAfter, [axis.map(([across, along]) => valveAxis(across, along)), motion])
  sound(sectionAngleDeg, [axis.map(([across, along]) => valveAxis(across, along))])
  sound(tiltOf, [axis.map(([across, along]) => valveAxis(across, along))])
  sound(
    pistonToValve,
    [
      fc.record({
        cut,
        valve,
        liftIn: perhaps(near(0, 2)),
        sinkIn: near(0, 0.25),
        dowelXIn: dowel,
        measuredIn: maybe(near(-0.5, 2)),
      }),
    ],
    500,
  )
  sound(valveAngleAfter, [cut, perhaps(degrees)])
  sound(boltHoleSlot, [
    fc.record({
      cut,
      holeLengthIn: perhaps(near(0.1, 12)),
      holeDiameterIn: perhaps(near(0.1, 2)),
      boltDiameterIn: perhaps(near(0.1, 2)),
      dowels: fc.boolean(),
    }),
  ])
  sound(spotFaceDepth, [cut, perhaps(near(0.2, 4))])
  sound(boltReach, [perhaps(near(0, 1)), near(0, 1), perhaps(near(0, 4))])
  sound(dowelFit, [perhaps(near(0, 1)), perhaps(near(0, 4))])
  sound(pointDrop, [cut, fc.record({ label: fc.constant('port'), xIn: perhaps(place), zIn: perhaps(place) }), dowel])
  sound(rockerDrop, [cut, placed, dowel])
  sound(camDrop, [cut, placed, dowel])
  sound(installedHeightGrowth, [near(0, 0.25)])
})

describe('seat', () => {
  const circle = fc.record({ diameterIn: perhaps(near(0.3, 6)), offsetIn: perhaps(near(-1, 1)) })
  const name = fc.constantFrom('insert' as const, 'top-cut' as const, 'sealing' as const)
  const seat = fc.record({
    circles: fc.record({
      insert: circle,
      'top-cut': circle,
      sealing: fc.record({ diameterIn: perhaps(near(0.3, 6)) }),
    }),
    gauge: fc.record({ depthIn: perhaps(near(-1.25, 2)), circle: name }),
    xIn: perhaps(place),
    valveAngleDeg: perhaps(degrees),
    cantDeg: degrees,
  })
  const placed: Arbitrary<PlacedCircle> = given(fc.tuple(seat, name).map(([of, which]) => placeCircle(of, which, true)))
  sound(placeCircle, [seat, name, fc.boolean()])
  sound(circleOver, [motion, placed])
  const shareBelowDeck = (of: Motion, one: PlacedCircle) => shareBelow(circleOver(of, one))
  sound(shareBelowDeck, [motion, placed])
  sound(topCutLoss, [cut, seat])
  sound(insertMarks, [cut, seat])
  sound(sealingMargin, [cut, seat])
})

describe('intake', () => {
  sound(
    vIntake,
    [
      fc.record({
        cut,
        deepEdge: edge,
        bankAngleDeg: perhaps(near(0, 180)),
        intakeFaceDeg: perhaps(degrees),
        portXIn: perhaps(place),
        portZIn: perhaps(place),
        dowelXIn: perhaps(place),
        faceHeightIn: perhaps(near(0.2, 10)),
        portUpFaceIn: perhaps(near(0, 10)),
      }),
    ],
    500,
  )
  sound(faceAngleFromManifold, [perhaps(near(0, 180)), perhaps(near(0, 180))])
  sound(inlineIntake, [
    fc.record({ cut, intakeFaceDeg: perhaps(degrees), portXIn: perhaps(place), portZIn: perhaps(place) }),
  ])
})

describe('compression', () => {
  const engine = fc.record(
    {
      boreIn: near(0.5, 12),
      strokeIn: near(0.5, 12),
      gasketBoreIn: near(0.5, 12),
      gasketThicknessIn: near(0, 0.5),
      deckClearanceIn: near(-0.5, 0.5),
      pistonDishCc: near(0, 200),
      pistonDomeCc: near(0, 200),
    },
    { requiredKeys: [] },
  )
  const volumes = fc.record({ sweptCc: near(1, 4000), besideChamberCc: near(-100, 100) })
  sound(cylinderVolumes, [engine])
  sound(compressionRatio, [volumes, cc])
  sound(chamberForRatio, [volumes, near(2, 30)])
  sound(ratioPerCc, [volumes, cc])
})

describe('straightness', () => {
  const corner = fc.constantFrom('intake-1', 'exhaust-1', 'intake-2', 'exhaust-2') as Arbitrary<
    Parameters<typeof cornerPoint>[0]
  >
  const deck = fc.record({ deepEdge: edge, milledWidthIn: plain(1, 20), deckLengthIn: plain(1, 60) })
  const reading = fc.record({
    name: fc.constant('a'),
    xIn: near(0, 20),
    yIn: near(0, 60),
    beforeIn: perhaps(near(0.3, 12)),
    afterIn: perhaps(near(0.3, 12)),
  })
  const readings = fc.record({
    points: fc.array(reading, { maxLength: 6 }),
    milledWidthIn: perhaps(width),
    deckLengthIn: perhaps(near(1, 60)),
    gaugedSquareTo: fc.constantFrom('old-deck' as const, 'new-deck' as const),
  })
  sound(planeFit, [readings], 1000)
  sound(judgeStraightness, [
    perhaps(near(0, 0.5)),
    perhaps(near(0, 0.5)),
    perhaps(near(1, 12)),
    fc.record({ acrossIn: near(0, 0.5), alongPerCylinderIn: near(0, 0.5) }),
  ])
  sound(cornerPoint, [corner, deck, fc.record({ edgeIn: plain(0, 1), endIn: plain(0, 1) })])
  sound(cornersOf, [
    fc.array(fc.record({ kind: fc.constantFrom('thickness', 'cc'), point: corner, value: fc.option(plain(0, 12)) })),
  ])
  sound(leastSquaresPlane, [fc.array(fc.tuple(plain(0, 20), plain(0, 60), plain(0, 1)), { maxLength: 8 })])
})

describe('flow', () => {
  const flow = near(0, 400)
  const pressure = near(0.5, 80)
  const density = near(0.02, 0.2)
  const conditions = fc.record({
    testPressureInH2O: maybe(pressure),
    boreFixtureIn: maybe(near(0.5, 12)),
    valveDiameterIn: maybe(near(0.3, 5)),
    entryFitting: words.filter((text) => unsound(text) === null),
    exhaustFitting: words.filter((text) => unsound(text) === null),
    leakCfm: maybe(near(0, 5)),
    port: edge,
    headId: fc.constantFrom('one', 'two'),
  })
  // Often the same ones, as two runs of a bench have them.
  const lift = fc.oneof(fc.constantFrom(0.1, 0.2, 0.3, 0.4), near(0, 1))
  const reading = fc.record({
    liftIn: lift,
    flowCfm: maybe(flow),
    notTaken: fc.option(fc.constant('coil bind')),
  })
  const run = fc.record({ conditions, points: fc.array(reading, { maxLength: 5 }) })
  const point = fc.record({ liftIn: lift, flowCfm: flow })
  const curve: Arbitrary<FlowCurve> = given(
    fc.array(point, { minLength: 2, maxLength: 8 }).map((points) => monotoneCurve(points)),
  )
  sound(convertFlow, [flow, pressure, pressure])
  sound(correctForLeak, [flow, pressure, near(0, 10), pressure])
  sound(correctedPoints, [run, maybe(pressure)])
  sound(idealVelocityFps, [pressure, density])
  sound(idealFlowCfmPerIn2, [pressure, density])
  sound(meanVelocityFps, [flow, near(0.01, 100)])
  sound(dischargeCoefficients, [
    fc.record({
      flowCfm: flow,
      testPressureInH2O: pressure,
      valveDiameterIn: near(0.3, 5),
      liftIn: near(0, 2),
      densityLbFt3: density,
    }),
  ])
  sound(airDensityKgM3, [near(-40, 60), near(50_000, 110_000), near(0, 100)])
  sound(densityLbFt3FromKgM3, [plain(0, 2)])
  sound(monotoneCurve, [fc.array(point, { maxLength: 8 })], 500)
  sound(repeatedLift, [fc.array(point, { maxLength: 8 })])
  sound(flowAt, [curve, near(0, 1)], 300)
  sound(meanFlow, [curve, near(0, 1), near(0, 1)], 300)
  sound(compareFlow, [run, run, fc.record({ repeatability: near(0, 0.2) })], 500)
  sound(taken, [fc.array(reading, { maxLength: 5 })])
  sound(exhaustToIntake, [run, run], 500)
  sound(likeForLike, [conditions, conditions])
  sound(repeatabilityOf, [fc.array(fc.array(run, { maxLength: 3 }), { maxLength: 2 })], 500)
  sound(checkLimits, [fc.record({ flowCfm: flow, liftIn: near(0, 2) }, { requiredKeys: [] })])
  sound(powerEstimateHp, [flow, pressure, near(1, 24)])
})

describe('figures smaller than anything that can be set or read', () => {
  const run = (flowCfm: number, port: 'intake' | 'exhaust' = 'intake') => ({
    conditions: {
      testPressureInH2O: 28,
      boreFixtureIn: 4,
      valveDiameterIn: 2,
      entryFitting: '',
      exhaustFitting: '',
      leakCfm: null,
      port,
      headId: 'one',
    },
    points: [{ liftIn: 0.1, flowCfm, notTaken: null }],
  })
  const dot = (xIn: number, yIn: number, afterIn: number) => ({ name: 'a', xIn, yIn, beforeIn: 4.5, afterIn })
  const dots = [dot(0, 3e-80, 4.4), dot(8e-76, 0, 4.4), dot(0, 0, 4.5)]

  it.each<[string, () => unknown]>([
    [
      'readings all at one point',
      () => planeFit({ points: dots, milledWidthIn: 7, deckLengthIn: 20, gaugedSquareTo: 'new-deck' }),
    ],
    [
      'a valve off its seat by nothing',
      () => dischargeCoefficients({ flowCfm: 250, testPressureInH2O: 28, valveDiameterIn: 2, liftIn: 5e-324 }),
    ],
    [
      'two lifts that are one',
      () =>
        monotoneCurve([
          { liftIn: 0, flowCfm: 0 },
          { liftIn: 5e-324, flowCfm: 60 },
        ]),
    ],
    ['a gain on nothing', () => compareFlow(run(5e-324), run(60))],
    ['a share of nothing', () => exhaustToIntake(run(5e-324), run(60, 'exhaust'))],
    ['an opening on a deck of no width', () => angleForVolume(3, 0, { areaIn2: 10, centreIn: 0, milledWidthIn: 0 })],
    ['an opening without end', () => circleOpening(1e154, 3, 7)],
  ])('%s', (_, ask) => {
    expect(unsound(ask())).toBeNull()
  })

  it('and less than nothing is no size: a circle of -3.6 in', () => {
    expect(circleOpening(-3.6, 3.5, 7)).toMatchObject({ ok: false, refusal: { code: 'out-of-range' } })
    expect(angleForVolume(3, 0, { areaIn2: 10, centreIn: 0.25, milledWidthIn: 0.5 })).toMatchObject({
      ok: false,
      refusal: { code: 'out-of-range', message: 'milled width: 0.5 is not between 1 and 20.' },
    })
  })
})

it('every public function of these folders is among these properties, here or in a file beside this one', () => {
  const here = fileURLToPath(new URL('.', import.meta.url))
  const asked = readdirSync(here)
    .filter((file) => /^no-nan.*\.test\.ts$/.test(file))
    .map((file) => readFileSync(here + file, 'utf8').replaceAll(/^import [^;]*? from '.*'$/gm, ''))
    .join('\n')
  const exported = exportedFrom(computing)
  expect(exported.length).toBeGreaterThan(90)
  expect(exported.filter(({ name }) => !new RegExp(`\\b${name}\\b`).test(asked))).toEqual([])
})
