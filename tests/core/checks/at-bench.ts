import { expectedCorners } from '@/lib/core/at-bench/expected-corners'
import { sinkRoom } from '@/lib/core/at-bench/sink-room'
import { must } from '@/lib/core/errors'
import { evaluate } from 'mathjs'
import type { CornerName } from '@/lib/core/straightness/corner-point'
import { newDeck } from '../clearance/vectors'
import { check, type Check, type Section } from './check'

const W = 7
const deck = { deepEdge: 'exhaust', milledWidthIn: W, deckLengthIn: 20 } as const
const before = { 'intake-1': 4.5, 'exhaust-1': 4.502, 'intake-2': 4.499, 'exhaust-2': 4.501 }
const cuts = [
  [0.02, 0, 0],
  [0.02, 0.063, 0],
  [0.008, 0.1222, 0.5],
] as const

/** The place touched on top of the head, over the new deck: a distance between a point and a line. */
function overNewDeck(corner: CornerName, [flatIn, angleIn, insetIn]: (typeof cuts)[number]): number {
  const x = corner.startsWith('exhaust') ? W - insetIn : insetIn
  return newDeck(flatIn, angleIn, W).height([x, before[corner]])
}

const ours = (corner: CornerName, [flatIn, angleIn, insetIn]: (typeof cuts)[number]): number =>
  must(expectedCorners(before, { flatIn, angleIn }, { ...deck, inset: { edgeIn: insetIn, endIn: insetIn } })).find(
    (one) => one.corner === corner,
  )?.valueIn ?? NaN

/**
 * A valve head of D sunk by q sweeps a cylinder of π/4·D²·q; V + Σ π/4·D²·q = T is solved for q by hand:
 * q = (T − V)/(π/4·ΣD²), with cc turned into cubic inches by mathjs's own units.
 */
const byHand = (roomCc: number, squares: string): number =>
  Number(evaluate(`number(${roomCc} cm^3, in^3) / (pi / 4 * (${squares}))`))
const wedge = { intakeValveIn: 2.05, exhaustValveIn: 1.6 }
const fourValves = { intakeValveIn: 1.3, exhaustValveIn: 1.1, intakeValves: 2, exhaustValves: 2 }
const room = (cc: number, casting: Parameters<typeof sinkRoom>[2]) =>
  must(sinkRoom([{ chamber: '1', cc }], { cc: 60, toleranceCc: 0.5 }, casting))
const solved = 'hand-worked: V + Σ π/4·D²·q = T solved for q; mathjs 15 units'
const sinks: readonly Check[] = [
  check(
    'sink from 59.2 cc to 60.0, valves of 2.05 and 1.60 in',
    solved,
    [byHand(0.8, '2.05^2 + 1.6^2'), 'in', 1e-8],
    () => room(59.2, wedge).toTargetIn,
  ),
  check(
    'the same to 60.5, the end of the tolerance',
    solved,
    [byHand(1.3, '2.05^2 + 1.6^2'), 'in', 1e-8],
    () => room(59.2, wedge).mostIn,
  ),
  check(
    'sink from 60.0 cc to 60.5, two valves of 1.30 and two of 1.10 in',
    solved,
    [byHand(0.5, '2 * 1.3^2 + 2 * 1.1^2'), 'in', 1e-8],
    () => room(60, fourValves).mostIn,
  ),
  check(
    'sink from 60.7 cc: past the tolerance by',
    solved,
    [byHand(-0.2, '2 * 1.3^2 + 2 * 1.1^2'), 'in', 1e-8],
    () => room(60.7, fourValves).mostIn,
  ),
]

export const atBench: Section = {
  title: 'Figures at the bench',
  checks: [
    ...cuts.flatMap((cut) =>
      (Object.keys(before) as CornerName[]).map((corner): Check =>
        check(
          `${cut[0] * 1000} thou flat, ${cut[1] * 1000} at the edge, touched ${cut[2]} in inside: ${corner} reads`,
          'vectors',
          [overNewDeck(corner, cut), 'in', 1e-12],
          () => ours(corner, cut),
        ),
      ),
    ),
    ...sinks,
  ],
}
