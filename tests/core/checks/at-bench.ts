import { expectedCorners } from '@/lib/core/at-bench/expected-corners'
import { must } from '@/lib/core/errors'
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

export const atBench: Section = {
  title: 'Figures at the bench',
  checks: cuts.flatMap((cut) =>
    (Object.keys(before) as CornerName[]).map((corner): Check =>
      check(
        `${cut[0] * 1000} thou flat, ${cut[1] * 1000} at the edge, touched ${cut[2]} in inside: ${corner} reads`,
        'vectors',
        [overNewDeck(corner, cut), 'in', 1e-12],
        () => ours(corner, cut),
      ),
    ),
  ),
}
