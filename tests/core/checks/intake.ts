import { lusolve } from 'mathjs'
import { must } from '@/lib/core/errors'
import { inlineIntake } from '@/lib/core/intake/inline'
import { faceAngleFromManifold, vIntake, type VIntakeInput } from '@/lib/core/intake/v-engine'
import { dot, minus, newDeck, plus, rad, type V2 } from '../clearance/vectors'
import { check, type Check } from './check'

const flat = (bankAngleDeg: number, intakeFaceDeg: number) => {
  const cut = { flatIn: 0.1, angleIn: 0, milledWidthIn: null }
  const nowhere = { portXIn: null, portZIn: null, dowelXIn: null }
  return must(vIntake({ cut, deepEdge: 'exhaust', bankAngleDeg, intakeFaceDeg, ...nowhere }))
}

/** Bank, face angle, side and rails per unit of cut. */
const multipliers = [
  [90, 0, 1.0, 1.414],
  [90, 5, 1.1, 1.55],
  [90, 10, 1.233, 1.717],
  [90, 15, 1.414, 1.932],
  [90, 20, 1.673, 2.224],
] as const
const sixty = [
  [60, 0, 0.577],
  [60, 10, 0.653],
  [60, 20, 0.778],
  [60, 30, 1.0],
] as const
const usual = [
  [5, 1.1],
  [10, 1.23],
  [15, 1.4],
  [20, 1.7],
] as const
const triangle = 'derived: the triangle of drop, face and flange'
const trade = 'the trade’s usual multiplier, from memory'

const side = (bank: number, face: number, source: string, printed: number, tolerance: number): Check =>
  check(
    `${bank}° V, face at ${face}°: off the side, per unit of cut`,
    source,
    [printed, '', tolerance],
    () => flat(bank, face).sideIn / 0.1,
  )
const rails = (bank: number, face: number, source: string, printed: number, tolerance: number): Check =>
  check(
    `${bank}° V, face at ${face}°: off the rails, per unit of cut`,
    source,
    [printed, '', tolerance],
    () => flat(bank, face).railIn / 0.1,
  )
const flatCuts: readonly Check[] = [
  ...multipliers.map(([bank, face, printed]) => side(bank, face, triangle, printed, 0.0006)),
  ...sixty.map(([bank, face, printed]) => side(bank, face, triangle, printed, 0.0006)),
  ...usual.map(([face, printed]) => side(90, face, trade, printed, 0.03)),
  ...multipliers.map(([bank, face, , printed]) => rails(bank, face, triangle, printed, 0.0006)),
  rails(90, 10, trade, 1.71, 0.01),
]

const W = 7
type Angled = VIntakeInput & { readonly widthIn: number }
const common = {
  cut: { flatIn: 0.02, angleIn: W * Math.tan(rad(1)), milledWidthIn: W },
  widthIn: W,
  faceHeightIn: 3,
}
const exhaustDeep: Angled = {
  ...common,
  deepEdge: 'exhaust',
  bankAngleDeg: 90,
  intakeFaceDeg: 10,
  portXIn: 0.4,
  portZIn: 2.1,
  dowelXIn: 3.5,
}
const intakeDeep: Angled = { ...exhaustDeep, deepEdge: 'intake', portXIn: W - 0.4 }
const sixtyDegrees: Angled = { ...exhaustDeep, bankAngleDeg: 60, intakeFaceDeg: 22, portZIn: 2.6 }
const highPort: Angled = { ...exhaustDeep, portZIn: 5 }

/**
 * The bank standing in the engine, first number away from the valley, second upward: where port centre and flange were,
 * where the cut head brings the port, and the two steps that bring them together again, solved as two equations.
 */
function standing(input: Angled) {
  const [h, a] = [rad(Number(input.bankAngleDeg) / 2), rad(Number(input.intakeFaceDeg))]
  const outward = input.deepEdge === 'exhaust' ? 1 : -1
  const bore: V2 = [Math.sin(h), Math.cos(h)]
  const away: V2 = [Math.cos(h), -Math.sin(h)]
  const inEngine = ([x, z]: V2): V2 => plus(plus([0, 0], away, outward * x), bore, z)
  const flange = plus(plus([0, 0], away, Math.sin(a)), bore, Math.cos(a))
  const towardValley: V2 = [-flange[1], flange[0]]
  const deck = newDeck(input.cut.flatIn, input.cut.angleIn, input.widthIn)
  const port: V2 = [Number(input.portXIn), Number(input.portZIn)]
  const moved = minus(inEngine(deck.onBlock(port, Number(input.dowelXIn))), inEngine(port))
  // moved = v·(0, −1) + s·towardValley: down with the manifold, then square to its flange into what is too much.
  const equations = [
    [0, towardValley[0]],
    [-1, towardValley[1]],
  ]
  const [[railIn = NaN] = [], [sideIn = NaN] = []] = lusolve(equations, [...moved]) as number[][]
  const [dropIn, awayIn] = [-dot(moved, bore), dot(moved, away)]
  return { railIn, sideIn, dropIn, awayIn }
}
const vectors = 'vectors, two equations solved by mathjs 15'
const figure = (name: string, label: string, input: Angled, of: 'railIn' | 'sideIn' | 'dropIn' | 'awayIn') =>
  check(`${label}: ${name}`, vectors, [standing(input)[of], 'in', 1e-10], () => must(vIntake(input))[of])

const angleCuts: readonly Check[] = [
  ...(
    [
      ['90° V, 20 thou and 1° deep at the exhaust', exhaustDeep],
      ['the same, deep at the intake', intakeDeep],
      ['60° V, face at 22°, 20 thou and 1°', sixtyDegrees],
      ['90° V, port 5 in up', highPort],
    ] as const
  ).flatMap(([label, input]) => [
    figure('off the side', label, input, 'sideIn'),
    figure('off the rails', label, input, 'railIn'),
  ]),
  figure('drop of the port', '90° V, deep at the exhaust', exhaustDeep, 'dropIn'),
  figure('move away from the valley', '90° V, deep at the exhaust', exhaustDeep, 'awayIn'),
  check(
    'wedge over a face of 3 in at 1°, deep at the exhaust: more at the deck end',
    'derived: 3·tan 1°',
    [0.0523652, 'in', 1e-6],
    () => {
      const { face } = must(vIntake(exhaustDeep))
      return Number(face?.deckEndIn) - Number(face?.coverEndIn)
    },
  ),
  check('the same, deep at the intake: more at the deck end', 'derived: −3·tan 1°', [-0.0523652, 'in', 1e-6], () => {
    const { face } = must(vIntake(intakeDeep))
    return Number(face?.deckEndIn) - Number(face?.coverEndIn)
  }),
]

const others: readonly Check[] = [
  check('face angle on a 90° V with flanges at 110°', 'by hand: (110 − 90)/2', [10, '°', 0], () =>
    faceAngleFromManifold(110, 90),
  ),
  check(
    'inline, 30 thou, face at 30°: along the bore',
    'common practice: a flat cut brings all down by itself',
    [0.03, 'in', 0],
    () => inline().alongBoreIn,
  ),
  check(
    'the same: along the face',
    'by hand: 0.030·cos 30° = 0.030·0.8660254',
    [0.0259808, 'in', 1e-7],
    () => inline().alongFaceIn,
  ),
  check(
    'inline, 20 thou and 0.100 at the edge, port at (0.5, 2): along the bore',
    'vectors',
    [2 - newDeck(0.02, 0.1, W).height([0.5, 2]), 'in', 1e-12],
    () =>
      must(
        inlineIntake({
          cut: { flatIn: 0.02, angleIn: 0.1, milledWidthIn: W },
          intakeFaceDeg: 0,
          portXIn: 0.5,
          portZIn: 2,
        }),
      ).alongBoreIn,
  ),
]
const inline = () =>
  must(
    inlineIntake({
      cut: { flatIn: 0.03, angleIn: 0, milledWidthIn: null },
      intakeFaceDeg: 30,
      portXIn: null,
      portZIn: null,
    }),
  )

export const intake = { title: '7. The intake side', checks: [...flatCuts, ...angleCuts, ...others] }
