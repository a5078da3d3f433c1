import { describe, expect, it } from 'vitest'
import { chamberMean, headCc } from '@/lib/core/chamber/burette'
import { matchChambers } from '@/lib/core/chamber/match'
import { boltHoleSlot, spotFaceDepth } from '@/lib/core/clearance/bolt-hole'
import { boltReach, dowelFit } from '@/lib/core/clearance/bolt-reach'
import { pistonToValve, valveAngleAfter } from '@/lib/core/clearance/piston-to-valve'
import { installedHeightGrowth, rockerDrop } from '@/lib/core/clearance/point-drop'
import { motionOf } from '@/lib/core/clearance/rigid-motion'
import { chamberForRatio, compressionRatio, cylinderVolumes } from '@/lib/core/compression/ratio'
import { angleGivenIn, cutAngleDeg, edgeDepthIn } from '@/lib/core/cut/angle'
import { circleOpening } from '@/lib/core/cut/circle'
import { depthAt } from '@/lib/core/cut/depth-at'
import { draftedVolume } from '@/lib/core/cut/drafted-volume'
import { angleForVolume, flatAtAngle, flatForVolume } from '@/lib/core/cut/inverse'
import { openingOfOutline, type OutlinePoint } from '@/lib/core/cut/outline'
import { makePlan, type PlanInput } from '@/lib/core/cut/plan'
import { targetLine } from '@/lib/core/cut/target-line'
import { cutVolumeCc, sinkVolumeCc } from '@/lib/core/cut/volume'
import { must, type RefusalCode, type Result } from '@/lib/core/errors'
import { airDensityKgM3 } from '@/lib/core/flow/air-density'
import { compareFlow } from '@/lib/core/flow/compare'
import { flowAt, meanFlow, monotoneCurve } from '@/lib/core/flow/curve'
import { dischargeCoefficients } from '@/lib/core/flow/discharge'
import { exhaustToIntake } from '@/lib/core/flow/exhaust-to-intake'
import { powerEstimateHp } from '@/lib/core/flow/power-estimate'
import { convertFlow, correctForLeak } from '@/lib/core/flow/pressure'
import { correctedPoints } from '@/lib/core/flow/run'
import type { FlowConditions, FlowRun } from '@/lib/core/flow/types'
import { meanVelocityFps } from '@/lib/core/flow/velocity'
import { inlineIntake } from '@/lib/core/intake/inline'
import { faceAngleFromManifold, vIntake, type VIntakeInput } from '@/lib/core/intake/v-engine'
import { parseAmount } from '@/lib/core/money/amount'
import { parsePercent } from '@/lib/core/money/percent'
import { parseQuantity } from '@/lib/core/money/quantity'
import { learnRate, type RateCut } from '@/lib/core/rate/learn'
import { advisePass, type PassInput } from '@/lib/core/rate/next-pass'
import { priorRate, type Rate } from '@/lib/core/rate/rate'
import { insertMarks, sealingMargin, topCutLoss } from '@/lib/core/seat/after-cut'
import type { Seat } from '@/lib/core/seat/circles'
import { planeFit, type PlaneFitInput } from '@/lib/core/straightness/plane-fit'
import { judgeStraightness } from '@/lib/core/straightness/straightness'
import { parseFigure } from '@/lib/core/units/parse-figure'
import { quantities, quantityNames } from '@/lib/core/units/quantities'

/** A kind of bad input, what it is refused as, what the refusal says, and what it says is needed. */
type Kind = readonly [
  kind: string,
  ask: () => Result<unknown>,
  code: RefusalCode,
  says: RegExp,
  needs?: readonly string[],
]

const dollars = { currencyExponent: 2, locale: 'en-US' }
const figures: readonly Kind[] = [
  ['nothing typed', () => parseFigure('  ', 'depth'), 'unreadable', /Type a figure/],
  ['a word', () => parseFigure('about ten', 'depth'), 'unreadable', /“about ten” is not a figure/],
  ['two points', () => parseFigure('1.2.3', 'depth'), 'unreadable', /is not a figure/],
  ['a fraction over nothing', () => parseFigure('1/0', 'depth'), 'unreadable', /is not a figure/],
  ['a part larger than a whole', () => parseFigure('1 9/8', 'bore'), 'unreadable', /is not a figure/],
  ['a whole sentence', () => parseFigure('0.018 and a bit more than that', 'depth'), 'unreadable', /does not fit here/],
  ['far too many digits', () => parseFigure('1'.repeat(41), 'depth'), 'unreadable', /too long/],
  [
    'a unit of something else',
    () => parseFigure('10 cc', 'depth'),
    'unreadable',
    /does not fit here\. Use in, thou, mm/,
  ],
  ['a unit where a count is wanted', () => parseFigure('8 in', 'chambers'), 'unreadable', /plain number/],
  [
    'a comma that could part thousands',
    () => parseFigure('1,234.5', 'thickness'),
    'ambiguous',
    /decimal point and no comma/,
  ],
  ['a point left out', () => parseFigure('3415', 'lift'), 'ambiguous', /0\.3415 in or 3415 thou\?/],
  ['millimetres in an inch field', () => parseFigure('88', 'bore'), 'ambiguous', /0\.88 in or 88 mm\?/],
  [
    'inches in a thou field',
    () => parseFigure('.018', 'depth', 'thou'),
    'ambiguous',
    /\.018 thou or \.018 in or \.018 mm\?/,
  ],
  [
    'a figure nobody has',
    () => parseFigure('40 in', 'bore'),
    'out-of-range',
    /40 in is not possible for bore: it must be 0\.5000 in to 12\.0000 in/,
  ],
  [
    'a figure below nothing',
    () => parseFigure('-0.02 in', 'cutDepth'),
    'out-of-range',
    /not possible for depth of cut/,
  ],
  ['half a chamber', () => parseFigure('7.5', 'chambers'), 'out-of-range', /whole number/],
  [
    'an amount that is none',
    () => parseAmount('12,50.00', dollars),
    'unreadable',
    /Type an amount such as 125 or 125\.50/,
  ],
  ['an amount beyond the books', () => parseAmount('20000001', dollars), 'unreadable', /too large/],
  ['no quantity', () => parseQuantity('0'), 'unreadable', /Enter a quantity above 0/],
  ['no percentage', () => parsePercent('8.25551'), 'unreadable', /Enter a percentage/],
  ['more decimals than the money has', () => parseAmount('1.255', dollars), 'unreadable', /Type an amount/],
]

const burette = { divisionCc: 0.2, repeatabilityCc: 0.3 }
const chambers: readonly Kind[] = [
  ['a chamber without a reading', () => chamberMean([], burette), 'missing', /Needs a cc reading/, ['cc']],
  ['a head without a chamber', () => headCc([]), 'missing', /at least one chamber/, ['cc']],
  ['an impossible chamber', () => chamberMean([62, 0.5], burette), 'out-of-range', /0\.5 is not between 1 and 400/],
  ['a reading that is no number', () => chamberMean([62, NaN], burette), 'out-of-range', /NaN is not between/],
  ['a reading without end', () => chamberMean([Infinity], burette), 'out-of-range', /Infinity is not between/],
  ['a reading without end, below nothing', () => chamberMean([-Infinity], burette), 'out-of-range', /-Infinity is not/],
  [
    'a burette graduated below nothing',
    () => chamberMean([62], { ...burette, divisionCc: -0.2 }),
    'out-of-range',
    /burette division: -0\.2/,
  ],
  [
    'a tolerance of match below nothing',
    () => matchChambers([{ tag: 'T-0001', chamber: 1, cc: 62 }], -1),
    'out-of-range',
    /tolerance of the match/,
  ],
]

const W = 7
const onDeck = { areaIn2: 10.1706, centreIn: 4.445 }
const opening = { ...onDeck, milledWidthIn: W }
const cutOf = (flatIn: number, angleIn = 0) => ({ flatIn, angleIn, milledWidthIn: W })
const angled = cutOf(0.01, 0.1)
const outline = (...points: readonly (readonly [number, number])[]): OutlinePoint[] =>
  points.map(([xIn, yIn]) => ({ xIn, yIn }))
const traced = (...points: readonly (readonly [number, number])[]) => openingOfOutline(outline(...points), W)
const lineOf = (more: Partial<Parameters<typeof targetLine>[0]>) =>
  targetLine({
    depthIn: 0.06,
    centroidShare: 0.635,
    milledWidthIn: W,
    largestAngleDeg: 1,
    limits: [],
    ...more,
  })

const cuts: readonly Kind[] = [
  ['a flat part below nothing', () => cutVolumeCc(onDeck, cutOf(-0.001)), 'out-of-range', /leave a ridge/],
  ['a flat part below nothing, on the block', () => motionOf(cutOf(-0.001)), 'out-of-range', /flat part: -0\.001/],
  [
    'a flat part too deep',
    () => cutVolumeCc(onDeck, cutOf(0.51)),
    'out-of-range',
    /flat part: 0\.51 is not between 0 and 0\.5/,
  ],
  ['an angle of more than five degrees', () => cutAngleDeg(0.5, 5), 'out-of-range', /more than 5° is no deck cut/],
  [
    'an angle deeper than a head has',
    () => edgeDepthIn(5, W),
    'out-of-range',
    /0\.612 in at the deep edge.*not possible/,
  ],
  [
    'degrees and depth that disagree',
    () => angleGivenIn({ angleDeg: 1, angleIn: 0.1, milledWidthIn: W }),
    'contradiction',
    /122\.2 thou at the deep edge, not 100 thou/,
  ],
  ['degrees without a width', () => edgeDepthIn(1, null), 'missing', /Needs milled width/, ['milledWidthIn']],
  ['a width nobody mills', () => edgeDepthIn(1, 30), 'out-of-range', /milled width: 30/],
  ['a place off the deck', () => depthAt(cutOf(0.02), 7.1), 'out-of-range', /place across the deck/],
  ['an outline of two points', () => traced([2, 0], [5, 0]), 'missing', /three points or more/, ['outline']],
  ['an outline all on a line', () => traced([2, 0], [3, 0], [4, 0]), 'contradiction', /crosses or touches itself/],
  [
    'an outline that crosses itself',
    () => traced([2, 0], [5, 3], [5, 0], [2, 3]),
    'contradiction',
    /crosses or touches/,
  ],
  ['a corner given twice', () => traced([2, 0], [5, 0], [5, 0], [5, 3]), 'contradiction', /crosses or touches/],
  [
    'an outline off the deck',
    () => traced([5, 0], [7.1, 0], [7, 3]),
    'out-of-range',
    /must lie on the deck, 0 to 7 in/,
  ],
  [
    'an outline with a corner that is no number',
    () => traced([2, NaN], [5, 0], [5, 3]),
    'out-of-range',
    /must lie on the deck/,
  ],
  ['an opening too small for a chamber', () => traced([2, 0], [2.5, 0], [2.5, 0.5]), 'out-of-range', /opening area/],
  ['a circle over the edge', () => circleOpening(3.6, 1, W), 'out-of-range', /does not lie on the deck/],
  [
    'a wall that leans more than half way',
    () => draftedVolume(cutOf(0.02), outline([2, 0], [5, 0], [5, 3], [2, 3]), 46),
    'out-of-range',
    /wall draft: 46/,
  ],
  [
    'an outline finer than its draft',
    () => draftedVolume(cutOf(0.2), outline([2, 0], [5, 0], [5, 2.99], [4.99, 3], [2, 3]), 40),
    'out-of-range',
    /edges too short/,
  ],
  ['a volume to be put back', () => flatForVolume(-1, 10), 'unreachable', /only makes a chamber smaller/],
  ['more volume than a head has', () => flatForVolume(90, 10), 'unreachable', /more than any head allows/],
  [
    'a flat part that takes it all and more',
    () => angleForVolume(3, 0.019, opening),
    'unreachable',
    /a smaller flat part/,
  ],
  ['an angle that takes it all and more', () => flatAtAngle(3, 1, opening), 'unreachable', /a smaller angle/],
  [
    'an opening centred on the edge',
    () => angleForVolume(3, 0, { ...opening, centreIn: 0 }),
    'out-of-range',
    /centre of the opening/,
  ],
  [
    'limits that stand against one another',
    () =>
      lineOf({
        limits: [
          { name: 'land', atShare: 0, mostIn: 0.03 },
          { name: 'thickness', atShare: 1, mostIn: 0.07 },
        ],
      }),
    'unreachable',
    /land stands against thickness/,
  ],
  [
    'a limit at a place off the deck',
    () => lineOf({ limits: [{ name: 'land', atShare: 1.2, mostIn: 0.1 }] }),
    'out-of-range',
    /land: place/,
  ],
  [
    'a line without the opening’s centre',
    () => lineOf({ centroidShare: null }),
    'missing',
    /centre of the opening/,
    ['centroidShare'],
  ],
  [
    'a valve sunk a quarter of an inch and more',
    () => sinkVolumeCc(2.05, 0.26),
    'out-of-range',
    /sink of the seat: 0\.26/,
  ],
]

const plan: PlanInput = {
  kind: 'flat',
  heads: [{ tag: 'T-0001', chambersCc: [64, 64.2, 63.8, 64], thicknessIn: 4.5 }],
  targetCc: 61,
  toleranceCc: 0.5,
  seatWorkGivesCc: 0,
  thouPerCc: 6,
  centroidShare: 0.635,
  milledWidthIn: W,
  split: { by: 'margin' },
  marginCc: 1,
  stopAtIn: null,
  limits: {
    angleCautionDeg: 0.5,
    angleLimitDeg: 1,
    thicknessNewIn: 4.5,
    thicknessLeastIn: null,
    classFlatOnly: false,
    classMinCc: null,
    classMaxCutIn: null,
  },
}
const planned = (more: Partial<PlanInput>) => () => makePlan({ ...plan, ...more })
const limited = (more: Partial<PlanInput['limits']>, rest: Partial<PlanInput> = {}) =>
  planned({ ...rest, limits: { ...plan.limits, ...more } })
const bare = [{ tag: 'T-0001', chambersCc: [], thicknessIn: null }]
const steep = { kind: 'angle', targetCc: 50 } as const

const plans: readonly Kind[] = [
  [
    'a target above what is there',
    planned({ targetCc: 66 }),
    'unreachable',
    /hold 64\.0 cc and the target is 66\.0 cc: cutting makes them smaller\. Open the chamber/,
  ],
  ['a target that is there already', planned({ targetCc: 64 }), 'unreachable', /nothing to cut/],
  ['a plan without a head', planned({ heads: [] }), 'missing', /Needs a head/, ['heads']],
  ['a plan without a rate', planned({ thouPerCc: null }), 'missing', /Needs rate/, ['thouPerCc']],
  ['a plan without a volume', planned({ heads: bare }), 'missing', /present chamber volume/, ['presentCc']],
  ['a plan without a target', planned({ targetCc: null }), 'missing', /Needs target/, ['targetCc']],
  [
    'a clean-up without its limit',
    planned({ kind: 'clean-up', targetCc: null }),
    'missing',
    /stop-at limit/,
    ['stopAtIn'],
  ],
  [
    'an angle cut without the centre',
    planned({ kind: 'angle', centroidShare: null }),
    'missing',
    /centre of the opening/,
    ['centroidShare'],
  ],
  ['seat work that takes volume away', planned({ seatWorkGivesCc: -1 }), 'out-of-range', /what the seat work adds: -1/],
  [
    'an impossible chamber of one head',
    planned({ heads: [{ tag: 'T-0002', chambersCc: [64, 500], thicknessIn: null }] }),
    'out-of-range',
    /T-0002 chamber 2: 500/,
  ],
  ['a depth no head has', planned({ targetCc: 2, thouPerCc: 30 }), 'unreachable', /more than any head allows/],
  ['an angle over the shop’s limit', planned(steep), 'unreachable', /over the limit of 1°: take more of it flat/],
  [
    'an angle in a class of flat cuts',
    limited({ classFlatOnly: true, angleLimitDeg: 2 }, steep),
    'unreachable',
    /class allows flat cuts only/,
  ],
  [
    'less than the class’s smallest chamber',
    limited({ classMinCc: 61 }),
    'unreachable',
    /smallest chamber would finish at 60\.8 cc; the class minimum is 61\.0 cc/,
  ],
  [
    'more than the class’s deepest cut',
    limited({ classMaxCutIn: 0.01 }),
    'unreachable',
    /class allows 10 thou at the deepest; with this cut it would be 18 thou/,
  ],
  [
    'less than the least thickness',
    limited({ thicknessLeastIn: 4.49 }),
    'unreachable',
    /T-0001 would be left 4\.482 in thick; the minimum is 4\.490 in/,
  ],
  [
    'a clean-up that takes the whole chamber',
    planned({
      kind: 'clean-up',
      targetCc: null,
      stopAtIn: 0.1,
      thouPerCc: 0.5,
      heads: [{ tag: 'T-0001', chambersCc: [60], thicknessIn: null }],
    }),
    'out-of-range',
    /more than a chamber holds/,
  ],
]

const rate: Rate = { ccPerThou: 1 / 6, uCcPerThou: 0.0097, cuts: 0, prior: 'outline' }
const pass: PassInput = { presentCc: 63, uPresentCc: 0.1, targetCc: 60, toleranceCc: 0.5, rate }
const advised = (more: Partial<PassInput>) => () => advisePass({ ...pass, ...more })
const taught: RateCut = {
  depthThou: 10,
  beforeCc: 64,
  uBeforeCc: 0.1,
  afterCc: 62.4,
  uAfterCc: 0.1,
  likeForLike: true,
}

const rates: readonly Kind[] = [
  [
    'an opening not traced',
    () => priorRate({ kind: 'outline', openingAreaIn2: null }),
    'missing',
    /Needs opening area/,
    ['openingAreaIn2'],
  ],
  [
    'a perimeter of nothing',
    () => priorRate({ kind: 'perimeter', perimeterIn: 0 }),
    'out-of-range',
    /chamber perimeter: 0/,
  ],
  [
    'a cut of no depth',
    () => learnRate(rate, [{ ...taught, depthThou: 0 }]),
    'out-of-range',
    /depth of the cut in thou: 0/,
  ],
  [
    'a cut after which there is more',
    () => learnRate({ ...rate, uCcPerThou: 1 }, [{ ...taught, afterCc: 70 }]),
    'contradiction',
    /10 thou is on record that took no volume/,
  ],
  [
    'a tolerance smaller than what is known',
    advised({ uPresentCc: 0.21 }),
    'measure-again',
    /good to 0\.21 cc.*Read every chamber at least twice/,
  ],
  [
    'a head under its tolerance already',
    advised({ presentCc: 59.4 }),
    'hold',
    /more than 0\.50 cc under the target of 60\.0 cc: stop and get the owner/,
  ],
  [
    'a chamber under its class already',
    advised({ smallest: { cc: 59.3, uCc: 0.1, classMinimumCc: 59.5 } }),
    'hold',
    /under the class minimum of 59\.5 cc: stop/,
  ],
  [
    'a chamber on its class’s limit',
    advised({ smallest: { cc: 59.5, uCc: 0.1, classMinimumCc: 59.5 } }),
    'unreachable',
    /No pass is safe: the smallest chamber/,
  ],
  [
    'a mill too coarse for the tolerance',
    advised({ presentCc: 60.2, uPresentCc: 0, toleranceCc: 0.1, depthErrorThou: 1 }),
    'unreachable',
    /half a thou could already go/,
  ],
  [
    'a way to the target no head has',
    advised({ presentCc: 300, rate: { ...rate, ccPerThou: 0.1 } }),
    'unreachable',
    /more than any head allows/,
  ],
  ['a rate of nothing', advised({ rate: { ...rate, ccPerThou: 0 } }), 'out-of-range', /rate in cc per thou: 0/],
]

const corner = (name: string, xIn: number, yIn: number, afterIn: number | null = 4.48) => ({
  name,
  xIn,
  yIn,
  beforeIn: 4.5,
  afterIn,
})
const fitted =
  (points: PlaneFitInput['points'], more: Partial<PlaneFitInput> = {}) =>
  () =>
    planeFit({ points, milledWidthIn: W, deckLengthIn: 20, gaugedSquareTo: 'old-deck', ...more })
const three = [corner('a', 0, 0), corner('b', 7, 0), corner('c', 0, 20)]

const thickness: readonly Kind[] = [
  ['thickness at two places', fitted(three.slice(0, 2)), 'missing', /three places or more; there are 2/, ['points']],
  [
    'thickness before, and not after',
    fitted([...three.slice(0, 2), corner('c', 0, 20, null)]),
    'missing',
    /before and after/,
    ['points'],
  ],
  [
    'places all on a line',
    fitted([corner('a', 1, 1), corner('b', 2, 2), corner('c', 3, 3)]),
    'missing',
    /lie on one line/,
    ['points'],
  ],
  [
    'an impossible thickness',
    fitted([...three, corner('d', 7, 20, 0.1)]),
    'out-of-range',
    /thickness after at d: 0\.1/,
  ],
  ['a deck of unknown length', fitted(three, { deckLengthIn: null }), 'missing', /deck length/, ['deckLengthIn']],
  ['a gap below nothing', () => judgeStraightness(-0.001, 0, 4), 'out-of-range', /straightness across: -0\.001/],
  ['straightness not read', () => judgeStraightness(null, 0.001, 4), 'missing', /straightness across/, ['acrossIn']],
]

const volumes = { sweptCc: 720, besideChamberCc: 20 }
const cylinder = { boreIn: 4, strokeIn: 3.48, gasketBoreIn: 4, gasketThicknessIn: 0.02, deckClearanceIn: 0 }
const ratios: readonly Kind[] = [
  [
    'a dome larger than the chamber',
    () => compressionRatio({ ...volumes, besideChamberCc: -70 }, 64),
    'contradiction',
    /fill the whole chamber: check dome/,
  ],
  [
    'a ratio of one to one',
    () => chamberForRatio(volumes, 1),
    'out-of-range',
    /compression ratio: 1 is not between 2 and 30/,
  ],
  [
    'a ratio that leaves no chamber',
    () => chamberForRatio({ ...volumes, sweptCc: 300 }, 25),
    'unreachable',
    /would need a chamber of -7\.5 cc/,
  ],
  [
    'an engine of which nothing is known',
    () => cylinderVolumes({}),
    'missing',
    /Needs bore, stroke, gasket bore, gasket thickness, deck clearance, piston dish or dome/,
    ['boreIn', 'strokeIn', 'gasketBoreIn', 'gasketThicknessIn', 'deckClearanceIn', 'pistonDishCc'],
  ],
  [
    'a piston of which neither dish nor dome is known',
    () => cylinderVolumes(cylinder),
    'missing',
    /piston dish or dome/,
    ['pistonDishCc'],
  ],
  [
    'a piston an inch down',
    () => cylinderVolumes({ ...cylinder, pistonDishCc: 0, deckClearanceIn: 1 }),
    'out-of-range',
    /deck clearance: 1/,
  ],
]

const v: VIntakeInput = {
  cut: cutOf(0.03),
  deepEdge: 'exhaust',
  bankAngleDeg: 90,
  intakeFaceDeg: 10,
  portXIn: 0.4,
  portZIn: 2,
  dowelXIn: 3.5,
}
const nowhere = { portXIn: null, portZIn: null, dowelXIn: null }
const intakes: readonly Kind[] = [
  [
    'a flange lying nearly flat',
    () => vIntake({ ...v, intakeFaceDeg: 40 }),
    'out-of-range',
    /come to 85°: the flange lies nearly flat/,
  ],
  ['a bank of more than half a turn', () => vIntake({ ...v, bankAngleDeg: 181 }), 'out-of-range', /bank angle: 181/],
  ['a V of unknown angle', () => vIntake({ ...v, bankAngleDeg: null }), 'missing', /bank angle/, ['bankAngleDeg']],
  [
    'an angle cut with the port nowhere',
    () => vIntake({ ...v, cut: angled, ...nowhere }),
    'missing',
    /port centre from the shallow edge, port centre above the deck, dowels/,
    ['portXIn', 'portZIn', 'dowelXIn'],
  ],
  [
    'a port above its face',
    () => vIntake({ ...v, cut: angled, faceHeightIn: 3, portUpFaceIn: 3.1 }),
    'out-of-range',
    /port centre up the face/,
  ],
  [
    'a face of unknown angle, inline',
    () => inlineIntake({ cut: cutOf(0.03), intakeFaceDeg: undefined, portXIn: null, portZIn: null }),
    'missing',
    /intake face angle/,
    ['intakeFaceDeg'],
  ],
  ['flanges turned inside out', () => faceAngleFromManifold(200, 90), 'out-of-range', /angle between the flanges: 200/],
]

const valve = { xIn: 3.2, zIn: 0.45, diameterIn: 2.02, valveAngleDeg: 23 }
const unknown = { xIn: null, zIn: null, diameterIn: null, valveAngleDeg: null }
const hole = { holeLengthIn: 3.5, holeDiameterIn: 0.5, boltDiameterIn: 0.4375, dowels: true }
const seat: Seat = {
  circles: {
    insert: { diameterIn: 2.25, offsetIn: 0.03 },
    'top-cut': { diameterIn: 2.1, offsetIn: 0.05 },
    sealing: { diameterIn: 2 },
  },
  gauge: { depthIn: 0.02, circle: 'top-cut' },
  xIn: 3,
  valveAngleDeg: 15,
}
const block: readonly Kind[] = [
  [
    'an angle cut under a valve nobody knows',
    () => pistonToValve({ cut: angled, valve: unknown, liftIn: null }),
    'missing',
    /valve from the shallow edge/,
    ['xIn', 'zIn', 'diameterIn', 'valveAngleDeg', 'liftIn'],
  ],
  [
    'a seat sunk at an unknown angle',
    () => pistonToValve({ cut: cutOf(0.03), valve: unknown, liftIn: null, sinkIn: 0.01 }),
    'missing',
    /valve angle/,
    ['valveAngleDeg'],
  ],
  [
    'a lift of more than two inches',
    () => pistonToValve({ cut: angled, valve, liftIn: 2.5 }),
    'out-of-range',
    /valve lift: 2\.5/,
  ],
  ['a valve lying down', () => valveAngleAfter(cutOf(0.03), 61), 'out-of-range', /valve angle: 61/],
  [
    'a bolt hole nobody measured',
    () =>
      boltHoleSlot({
        cut: angled,
        holeLengthIn: null,
        holeDiameterIn: null,
        boltDiameterIn: null,
        dowels: true,
      }),
    'missing',
    /bolt hole length, bolt hole, bolt/,
    ['holeLengthIn', 'holeDiameterIn', 'boltDiameterIn'],
  ],
  [
    'a bolt two feet long',
    () => boltHoleSlot({ cut: angled, ...hole, holeLengthIn: 24 }),
    'out-of-range',
    /bolt hole length: 24/,
  ],
  ['a spot face not measured', () => spotFaceDepth(angled, undefined), 'missing', /spot face/, ['spotFaceIn']],
  ['a blind hole of unknown thread', () => boltReach(0.03, 0, null), 'missing', /thread left/, ['threadLeftIn']],
  ['metal gone below nothing', () => dowelFit(-0.01, 0.1), 'out-of-range', /metal removed since new: -0\.01/],
  [
    'a rocker stand nowhere',
    () => rockerDrop(angled, { xIn: null, zIn: null }),
    'missing',
    /rocker stand/,
    ['xIn', 'zIn'],
  ],
  ['a seat raised', () => installedHeightGrowth(-0.01), 'out-of-range', /sink of the seat: -0\.01/],
  [
    'a top cut not gauged',
    () => topCutLoss(cutOf(0.03), { ...seat, gauge: { depthIn: null, circle: 'top-cut' } }),
    'missing',
    /gauge depth to the top-cut circle/,
    ['depthIn'],
  ],
  [
    'an insert two inches from its seat',
    () =>
      insertMarks(cutOf(0.03), {
        ...seat,
        circles: { ...seat.circles, insert: { diameterIn: 2.25, offsetIn: 2 } },
      }),
    'out-of-range',
    /offset of the insert's outer edge: 2/,
  ],
  [
    'a seat nowhere across the deck, cut at an angle',
    () => sealingMargin(angled, { ...seat, xIn: null }),
    'missing',
    /valve from the shallow edge/,
    ['xIn'],
  ],
]

const conditions: FlowConditions = {
  testPressureInH2O: 28,
  boreFixtureIn: 4.125,
  valveDiameterIn: 2.02,
  entryFitting: 'radius plate',
  exhaustFitting: 'none',
  leakCfm: null,
  port: 'intake',
  headId: 'one',
}
const readings = [
  [0.2, 120],
  [0.4, 230],
] as const
const run = (
  more: Partial<FlowConditions> = {},
  points: readonly (readonly [number, number])[] = readings,
): FlowRun => ({
  conditions: { ...conditions, ...more },
  points: points.map(([liftIn, flowCfm]) => ({ liftIn, flowCfm, notTaken: null })),
})
const exhaust = { port: 'exhaust' } as const
const points = readings.map(([liftIn, flowCfm]) => ({ liftIn, flowCfm }))
const curve = must(monotoneCurve(points))
const discharge = { flowCfm: 250, testPressureInH2O: 28, valveDiameterIn: 2.02, liftIn: 0.5 }

const flows: readonly Kind[] = [
  ['a curve of one lift', () => monotoneCurve(points.slice(0, 1)), 'missing', /at least two lifts/, ['points']],
  [
    'a lift that is there twice',
    () => monotoneCurve([...points, { liftIn: 0.4, flowCfm: 231 }]),
    'contradiction',
    /0\.4 in is there twice/,
  ],
  [
    'a run with a lift twice',
    () => compareFlow(run(), run({}, [...readings, [0.2, 121]])),
    'contradiction',
    /0\.2 in is there twice/,
  ],
  ['a lift beyond what was run', () => flowAt(curve, 0.41), 'out-of-range', /outside the lifts that were run/],
  ['a mean over lifts that go down', () => meanFlow(curve, 0.4, 0.2), 'out-of-range', /ends above its start/],
  ['a mean where there is no overlap', () => meanFlow(curve, 0.5, 0.6), 'out-of-range', /were not all run/],
  ['a leak larger than the flow', () => correctForLeak(4, 28, 5, 28), 'contradiction', /leak.*larger than the flow/],
  [
    'a shut valve',
    () => dischargeCoefficients({ ...discharge, liftIn: 0 }),
    'out-of-range',
    /shut valve has no curtain/,
  ],
  ['no test pressure', () => convertFlow(100, 0, 28), 'out-of-range', /test pressure must be from 0\.5 to 80 inH₂O/],
  [
    'a barometer in inches of mercury',
    () => airDensityKgM3(20, 29.92, 50),
    'out-of-range',
    /barometer must be from 50000 to 110000 Pa/,
  ],
  ['a port of no area', () => meanVelocityFps(100, 0), 'out-of-range', /area must be from 0\.01/],
  [
    'an intake run against an exhaust run',
    () => compareFlow(run(), run(exhaust)),
    'contradiction',
    /cannot be held against an exhaust run/,
  ],
  [
    'a bench that repeats nothing',
    () => compareFlow(run(), run(), { repeatability: 0.3 }),
    'out-of-range',
    /bench repeatability/,
  ],
  [
    'ports the wrong way round',
    () => exhaustToIntake(run(exhaust), run()),
    'contradiction',
    /exhaust run to an intake run/,
  ],
  [
    'one test pressure known and one not',
    () => exhaustToIntake(run(), run({ ...exhaust, testPressureInH2O: null })),
    'missing',
    /test pressure of both runs/,
    ['testPressureInH2O'],
  ],
  [
    'a run of unknown pressure to be converted',
    () => correctedPoints(run({ testPressureInH2O: null }), 28),
    'missing',
    /test pressure of the run/,
    ['testPressureInH2O'],
  ],
  ['an engine without cylinders', () => powerEstimateHp(126, 10, 0), 'out-of-range', /number of cylinders/],
]

const kinds: readonly Kind[] = [
  ...figures,
  ...chambers,
  ...cuts,
  ...plans,
  ...rates,
  ...thickness,
  ...ratios,
  ...intakes,
  ...block,
  ...flows,
]
const asked = ([kind, ask, code, says, needs]: Kind) => ({ kind, ask, code, says, needs })

describe('every kind of bad input is refused, and the refusal says what is wrong', () => {
  it.each(kinds.map(asked))('$kind', ({ ask, code, says, needs }) => {
    const answer = ask()
    if (answer.ok) throw new Error(`was not refused: ${JSON.stringify(answer.value)}`)
    expect(answer.refusal.code).toBe(code)
    expect(answer.refusal.message).toMatch(says)
    expect(answer.refusal.message).toMatch(/[.?]$/)
    expect(answer.refusal.needs).toEqual(needs)
  })

  it('there are more than forty, no two alike', () => {
    expect(kinds.length).toBeGreaterThan(40)
    expect(new Set(kinds.map(([kind]) => kind)).size).toBe(kinds.length)
  })
})

describe('past the limits of its quantity', () => {
  it.each(quantityNames)('%s, at either end', (quantity) => {
    const { least, most, unit, whole } = quantities[quantity]
    const step = whole ? 1 : Math.max(Math.abs(most), 1) / 1000
    const typed = (value: number) => parseFigure(`${value.toFixed(6)} ${unit}`, quantity)
    for (const value of [most + step, least - step]) {
      expect(typed(value), `${value}`).toMatchObject({ ok: false, refusal: { code: 'out-of-range' } })
    }
    for (const value of [least, most]) expect(typed(value), `${value}`).toMatchObject({ ok: true })
  })
})

describe('a cut of nothing is no bad input: it changes nothing and needs nothing', () => {
  const none = { flatIn: 0, angleIn: 0, milledWidthIn: null }

  it('on the block', () => {
    expect(must(pistonToValve({ cut: none, valve: unknown, liftIn: null })).lossIn).toBe(0)
    const noHole = { holeLengthIn: null, holeDiameterIn: null, boltDiameterIn: null, dowels: true }
    expect(must(boltHoleSlot({ cut: none, ...noHole }))).toEqual({ slotIn: 0, slotToward: null, leanIn: 0 })
    expect(must(spotFaceDepth(none, null))).toBe(0)
    expect(must(rockerDrop(none, { xIn: null, zIn: null })).pushrodLongerIn).toBe(0)
    expect(must(topCutLoss(none, { ...seat, xIn: null })).lostShare).toBe(0)
    const { sideIn, railIn } = must(vIntake({ ...v, ...nowhere, cut: none }))
    expect([sideIn, railIn]).toEqual([0, 0])
  })

  it('in volume', () => {
    expect(must(cutVolumeCc(onDeck, cutOf(0)))).toBe(0)
    expect(must(flatForVolume(0, 10))).toBe(0)
    expect(must(angleForVolume(0, 0, opening))).toBe(0)
    const square = outline([2, 0], [5, 0], [5, 3], [2, 3])
    expect(must(draftedVolume(cutOf(0), square, 10))).toEqual({ cc: 0, squareCc: 0, lessPart: 0 })
    const left = must(makePlan({ ...plan, kind: 'none', targetCc: null, thouPerCc: null, milledWidthIn: null }))
    expect(left).toMatchObject({ deepestIn: 0, removesCc: 0, angleDeg: 0 })
    expect(left.afterCutCc).toBeCloseTo(64, 12)
  })
})
