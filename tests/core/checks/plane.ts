import { lusolve, matrix, multiply, transpose } from 'mathjs'
import { must } from '@/lib/core/errors'
import { cutCheck } from '@/lib/core/straightness/cut-check'
import { edgesCut } from '@/lib/core/straightness/corners-fit'
import { cornersFit, type Corners } from '@/lib/core/straightness/corners-fit'
import { leanShiftIn } from '@/lib/core/straightness/lean-shift'
import { cornerPoint, type CornerName } from '@/lib/core/straightness/corner-point'
import { planeFit, type PlaneFitInput, type ThicknessPoint } from '@/lib/core/straightness/plane-fit'
import { judgeStraightness } from '@/lib/core/straightness/straightness'
import { check, type Check } from './check'

const size = { milledWidthIn: 7, deckLengthIn: 20 }
const deck = { ...size, deepEdge: 'exhaust' as const }
const corners: readonly CornerName[] = ['intake-1', 'exhaust-1', 'intake-2', 'exhaust-2']

const fit = (points: readonly ThicknessPoint[], gaugedSquareTo: PlaneFitInput['gaugedSquareTo']) =>
  must(planeFit({ ...size, points, gaugedSquareTo }))

/** Corners of a head 4.500 thick, with the readings after the cut as they are given. */
const cornersAfter = (...after: readonly number[]): ThicknessPoint[] =>
  corners.map((name, at) => ({ name, ...cornerPoint(name, deck), beforeIn: 4.5, afterIn: after[at] }))
const compound = () => fit(cornersAfter(4.48, 4.417, 4.48, 4.417), 'old-deck')

/** A cut of 20 thou and one degree, gauged on the new deck: the distance of a point to a line, as school teaches it. */
const slope = Math.tan(Math.PI / 180)
const distance = (x: number) => (4.5 - 0.02 - slope * x) / Math.sqrt(1 + slope ** 2)
const onNewDeck = cornersAfter(distance(0), distance(7), distance(0), distance(7))

/** Eleven readings that lie on no plane: places across and along, and how deep. */
const scattered = [
  [0.3, 1, 0.0212],
  [6.6, 1.2, 0.0811],
  [3.4, 2.5, 0.0519],
  [0.5, 6, 0.0229],
  [6.4, 6.6, 0.0802],
  [3.6, 9, 0.0541],
  [0.4, 12, 0.0231],
  [6.7, 13, 0.0833],
  [3.3, 16, 0.0517],
  [0.6, 19, 0.0248],
  [6.5, 19.2, 0.0822],
] as const
const rows = matrix(scattered.map(([x, y]) => [1, x, y]))
const right = matrix(scattered.map(([, , z]) => [z]))
const solved = lusolve(multiply(transpose(rows), rows), multiply(transpose(rows), right))
const [[at0 = NaN] = [], [perX = NaN] = [], [perY = NaN] = []] = solved.valueOf() as number[][]
const off = scattered.map(([x, y, z]) => z - at0 - perX * x - perY * y)
const scatteredFit = () =>
  fit(
    scattered.map(([xIn, yIn, z], at) => ({ name: `${at}`, xIn, yIn, beforeIn: 4.5, afterIn: 4.5 - z })),
    'old-deck',
  )
const normal = 'mathjs 15 lusolve of the normal equations'

/**
 * 20 flat and 63 angle over 7 in, touched half an inch inside: 4.500 − 0.020 − 0.063·0.5/7 = 4.4755 and
 * 4.500 − 0.020 − 0.063·6.5/7 = 4.4215 square to the old deck, times cos φ = 7/√(7² + 0.063²) on the new one.
 */
const cosPhi = 7 / Math.sqrt(49 + 0.063 ** 2)
const touchedInside = (): Corners => ({
  'intake-1': 4.4755 * cosPhi,
  'exhaust-1': 4.4215 * cosPhi,
  'intake-2': 4.4755 * cosPhi,
  'exhaust-2': 4.4215 * cosPhi,
})
const uncut: Corners = { 'intake-1': 4.5, 'exhaust-1': 4.5, 'intake-2': 4.5, 'exhaust-2': 4.5 }
const touchedFit = (insetIn: number) =>
  must(cornersFit({ ...deck, inset: { edgeIn: insetIn, endIn: insetIn } }, uncut, touchedInside()))

/** Without the deck's size there is no plane: each edge by its own two corners. */
const lost = (deepEdge: 'intake' | 'exhaust') =>
  edgesCut(
    { deepEdge, milledWidthIn: null, deckLengthIn: null, inset: null },
    { 'intake-1': 4.5, 'exhaust-1': 4.5, 'intake-2': 4.51, 'exhaust-2': 4.51 },
    { 'intake-1': 4.48, 'exhaust-1': 4.417, 'intake-2': 4.49, 'exhaust-2': 4.425 },
  )

const fits: readonly Check[] = [
  check('20 thou and 83 off corners 7 in apart: flat part', 'by hand', [0.02, 'in', 1e-12], () => compound().flatIn),
  check('the same: angle part', 'by hand: 0.083 − 0.020', [0.063, 'in', 1e-12], () => compound().angleIn),
  check(
    '4 thou more off both corners of end 2: taper',
    'by hand',
    [0.004, 'in', 1e-12],
    () => fit(cornersAfter(4.48, 4.417, 4.476, 4.413), 'old-deck').taperIn,
  ),
  check(
    'the same: flat part at mid-length',
    'by hand: (20 + 24)/2 thou',
    [0.022, 'in', 1e-12],
    () => fit(cornersAfter(4.48, 4.417, 4.476, 4.413), 'old-deck').flatIn,
  ),
  check('eleven scattered readings: flat part', normal, [at0 + 10 * perY, 'in', 1e-10], () => scatteredFit().flatIn),
  check('the same: angle part', normal, [7 * perX, 'in', 1e-10], () => scatteredFit().angleIn),
  check('the same: taper', normal, [20 * perY, 'in', 1e-10], () => scatteredFit().taperIn),
  check(
    'the same: residual, root mean square',
    normal,
    [Math.hypot(...off) / Math.sqrt(11), 'in', 1e-10],
    () => scatteredFit().residual?.rmsIn ?? NaN,
  ),
  check('the same: worst point', normal, [Math.max(...off.map(Math.abs)), 'in', 1e-10], () =>
    Math.abs(scatteredFit().residual?.worstIn ?? NaN),
  ),
  check(
    'one corner of four 4 thou off: residual',
    'by hand: by symmetry each shows a quarter',
    [0.001, 'in', 1e-12],
    () => fit(cornersAfter(4.48, 4.417, 4.48, 4.413), 'old-deck').residual?.rmsIn ?? NaN,
  ),
  check(
    'gauged on the new deck, 20 thou and 1°: flat part',
    'vectors: distance of a point to a line',
    [0.02, 'in', 1e-9],
    () => fit(onNewDeck, 'new-deck').flatIn,
  ),
  check(
    'the same: angle',
    'vectors: distance of a point to a line',
    [1, '°', 1e-6],
    () => fit(onNewDeck, 'new-deck').angleDeg,
  ),
  check(
    'the same, read as if square to the old deck: flat part too deep by',
    'derived: 0.7 thou; by hand 4.480·(1 − cos 1°) = 4.480·0.000152305',
    [0.00068233, 'in', 1e-8],
    () => fit(onNewDeck, 'old-deck').flatIn - fit(onNewDeck, 'new-deck').flatIn,
  ),
  check(
    'corners of a deck whose size nobody knows, 20 thou off the intake edge, 83 and 85 off the other: deep edge',
    'by hand: the mean of 83 and 85',
    [0.084, 'in', 1e-12],
    () => lost('exhaust')?.deepIn ?? NaN,
  ),
  check(
    'the same, deep at the intake: shallow edge',
    'by hand',
    [0.084, 'in', 1e-12],
    () => lost('intake')?.shallowIn ?? NaN,
  ),
  check(
    'true 20 flat, 63 angle over 7 in, touched 0.5 in inside: flat part',
    'by hand: thickness at 0.5 and 6.5 in',
    [0.02, 'in', 1e-9],
    () => touchedFit(0.5).flatIn,
  ),
  check(
    'the same: angle part',
    'by hand: thickness at 0.5 and 6.5 in',
    [0.063, 'in', 1e-9],
    () => touchedFit(0.5).angleIn,
  ),
  check(
    'the same, taken as the edges: flat part reads',
    'by hand: 0.020 + 0.063·0.5/7, and the tilt by 54 for 63',
    [0.0245, 'in', 6e-5],
    () => touchedFit(0).flatIn,
  ),
  check(
    'the same, taken as the edges: angle part reads',
    'by hand: 0.063·6/7',
    [0.054, 'in', 1e-5],
    () => touchedFit(0).angleIn,
  ),
  check(
    'a head 4.5 in thick that leans half a degree, cut at half a degree: flat part shifts by',
    'vectors: foot of the plumb line, 4.5·0.0087265·0.0087269',
    [0.0003427, 'in', 1e-8],
    () => leanShiftIn(4.5, 0.5, 0.5),
  ),
  check(
    'the same at one degree',
    'vectors: foot of the plumb line, 4.5·0.0174524·0.0174551',
    [0.00137085, 'in', 1e-8],
    () => leanShiftIn(4.5, 1, 1),
  ),
  check(
    'planned 20 thou, found 23: difference',
    'by hand',
    [0.003, 'in', 1e-12],
    () =>
      cutCheck({
        measured: { ...compound(), flatIn: 0.023 },
        wanted: { flatIn: 0.02, angleIn: null, angleDeg: null },
        marks: null,
        toleranceIn: 0.002,
        milledWidthIn: 7,
      })[0]?.wanted?.off ?? NaN,
  ),
]

export const plane = { title: '5. What a cut did', checks: fits }

const limits = (cylinders: number) => must(judgeStraightness(0, 0, cylinders))
export const straightness = {
  title: '10. Straightness',
  checks: [
    check('limit across', 'AllHead: 0.002 in', [0.002, 'in', 0], () => limits(4).acrossLimitIn),
    check(
      'limit along, head of four',
      'AllHead: 0.001 in a cylinder',
      [0.004, 'in', 1e-12],
      () => limits(4).alongLimitIn,
    ),
    check(
      'limit along, head of three',
      'AllHead: 0.001 in a cylinder',
      [0.003, 'in', 1e-12],
      () => limits(3).alongLimitIn,
    ),
    check(
      'exhaust corner of end 2, half an inch inside: across',
      'by hand: 7 − 0.5',
      [6.5, 'in', 0],
      () => cornerPoint('exhaust-2', deck, { edgeIn: 0.5, endIn: 0.5 }).xIn,
    ),
    check(
      'the same: along',
      'by hand: 20 − 0.5',
      [19.5, 'in', 0],
      () => cornerPoint('exhaust-2', deck, { edgeIn: 0.5, endIn: 0.5 }).yIn,
    ),
  ],
}
