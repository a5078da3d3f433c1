import type { CastingFacts } from '@/lib/core/casting/figures'
import { must } from '@/lib/core/errors'
import { deckNow, heightFromDeckNowIn } from '@/lib/core/head-now/deck-now'
import { deckNowFromNewDeckIn, goneByCut, mostGoneIn, sumOfGone, type KnownCut } from '@/lib/core/head-now/gone'
import { metalGone, type MetalGoneInput } from '@/lib/core/head-now/metal-gone'
import { nearestSeat } from '@/lib/core/head-now/seat-now'
import { consequences } from '@/lib/core/options/consequences'
import { degrees } from '@/lib/core/units/degrees'
import { SolidHead } from '../head-now/solid-head'
import { rad } from '../clearance/vectors'
import { check, type Check } from './check'

const W = 6
const intakeCut = (flatIn: number, deg: number): KnownCut => ({
  flatIn,
  angleIn: W * Math.tan(rad(deg)),
  deepEdge: 'intake',
})
const exhaustCut = (flatIn: number, deg: number): KnownCut => ({ ...intakeCut(flatIn, deg), deepEdge: 'exhaust' })

/** An invented seat: the sealing circle alone, so that the disc of the solid is all there is of it. */
const seat = { radiusIn: 1, fromIntakeEdgeIn: 3.3, heightIn: 0.62 }
const record = (valveAngleDeg: number, cantDeg = 0): CastingFacts => {
  const tilt = Math.sin(Math.atan(Math.hypot(Math.tan(rad(valveAngleDeg)), Math.tan(rad(cantDeg)))))
  return {
    milledWidthIn: W,
    exhaustValveXIn: seat.fromIntakeEdgeIn,
    exhaustValveAngleDeg: valveAngleDeg,
    exhaustValveCantDeg: cantDeg,
    exhaustSealingIn: 2 * seat.radiusIn,
    // The named circle is the sealing circle here: same size, no offset.
    exhaustTopCutIn: 2 * seat.radiusIn,
    exhaustTopCutOffsetIn: 0,
    exhaustSeatDepthIn: seat.heightIn - seat.radiusIn * tilt,
  }
}

/** Earlier cuts, then one more deep at the exhaust edge: margin by the record's figures and all the metal gone. */
function marginByRecord(facts: CastingFacts, earlier: readonly KnownCut[], last: KnownCut): number {
  const gone = sumOfGone(earlier.map(goneByCut))
  const head = {
    tag: 'T-0001',
    chambersCc: [],
    thicknessIn: null,
    metalGone: { gone, by: 'sum', takenAsFlat: false, differs: null } as const,
  }
  const { exhaust } = consequences({
    cut: { ...last, milledWidthIn: W },
    casting: facts,
    engine: { layout: 'unknown', camInHead: null },
    deepEdge: 'exhaust',
    beforeCc: null,
    finishedCc: null,
    sinkIn: 0,
    heads: [head],
  })
  return must(exhaust.sealing).marginIn
}

function marginOfSolid(valveAngleDeg: number, cantDeg: number, cuts: readonly KnownCut[]): number {
  const solid = new SolidHead(W, { ...seat, valveAngleDeg, cantDeg })
  for (const cut of cuts) solid.cut(cut)
  return solid.marginIn()
}

const histories = [
  ['0.020 flat, then 0.5° at the exhaust edge', 23, 0, [exhaustCut(0.02, 0)], exhaustCut(0, 0.5)],
  ['0.5° at the exhaust edge, then 0.020 and 0.25°', 23, 0, [exhaustCut(0, 0.5)], exhaustCut(0.02, 0.25)],
  ['0.5° at the intake edge, then 0.010 and 0.5° at the exhaust', -17, 0, [intakeCut(0, 0.5)], exhaustCut(0.01, 0.5)],
  [
    '0.3° intake, 0.015 flat, 0.5° exhaust, an upright valve',
    0,
    0,
    [intakeCut(0.005, 0.3), exhaustCut(0.015, 0)],
    exhaustCut(0, 0.5),
  ],
  [
    '0.4° exhaust, 0.2° intake, 0.010 and 0.3° exhaust, canted',
    16,
    8,
    [exhaustCut(0.01, 0.4), intakeCut(0, 0.2)],
    exhaustCut(0.01, 0.3),
  ],
] as const

const solids: readonly Check[] = histories.map(([said, angleDeg, cantDeg, earlier, last]) =>
  check(
    `${said}, valve at ${angleDeg}°: sealing margin`,
    'solid geometry: manifold-3d, the block cut and set down cut by cut; adding depths is good to 0.004 thou',
    [marginOfSolid(angleDeg, cantDeg, [...earlier, last]), 'in', 5e-6],
    () => marginByRecord(record(angleDeg, cantDeg), earlier, last),
  ),
)

const corners = (thicknessIn: number) => ({
  'intake-1': thicknessIn,
  'exhaust-1': thicknessIn,
  'intake-2': thicknessIn,
  'exhaust-2': thicknessIn,
})
const gauged: MetalGoneInput = {
  newThicknessIn: 4.5,
  corners: corners(4.48),
  deck: { milledWidthIn: W, deckLengthIn: 20, inset: { edgeIn: 0, endIn: 0 } },
  knownCuts: [],
  removedBeforeIn: null,
  isNew: false,
}

/** 0.010 and 1° at the exhaust edge off a solid block of 4.5 in, gauged on its deck at the edges. */
const leaning = new SolidHead(W, { ...seat, valveAngleDeg: 0 }).cut(exhaustCut(0.01, 1))
const read = leaning.thicknessIn()
const byCorners = () =>
  must(
    metalGone({
      ...gauged,
      corners: {
        'intake-1': read.intake,
        'intake-2': read.intake,
        'exhaust-1': read.exhaust,
        'exhaust-2': read.exhaust,
      },
    }),
  ).gone

const known: readonly Check[] = [
  check(
    'named circle 0.1292 from the new deck, 0.140 gone flat: from the deck now',
    'by hand: 0.1292 − 0.1400',
    [-0.0108, 'in', 1e-12],
    () =>
      must(
        nearestSeat({
          record: { ...record(15), exhaustSeatDepthIn: 0.1292 },
          port: 'exhaust',
          deck: must(deckNow(goneByCut({ flatIn: 0.14, angleIn: 0, deepEdge: 'exhaust' }), 'exhaust', W)),
          readings: [],
        }),
      ).depthFromDeckNowIn,
  ),
  check(
    '0.020 flat and 0.063 at the exhaust edge, ξ 0.635: deck now under the new one',
    'by hand: 0.020 + 0.635·0.063',
    [0.060005, 'in', 1e-12],
    () => deckNowFromNewDeckIn(goneByCut({ flatIn: 0.02, angleIn: 0.063, deepEdge: 'exhaust' }), 0.635),
  ),
  check(
    '0.030 at the exhaust edge and 0.030 at the intake edge: whole lean',
    'by hand: the same depth all over',
    [0, '°', 1e-12],
    () => {
      const gone = sumOfGone([
        goneByCut({ flatIn: 0, angleIn: 0.03, deepEdge: 'exhaust' }),
        goneByCut({ flatIn: 0, angleIn: 0.03, deepEdge: 'intake' }),
      ])
      return degrees(must(deckNow(gone, 'exhaust', W)).angleRad)
    },
  ),
  check('4.500 new, 4.480 at all corners: metal gone', 'by hand: 4.500 − 4.480', [0.02, 'in', 1e-12], () =>
    mostGoneIn(must(metalGone(gauged)).gone),
  ),
  check(
    '0.010 and 1° off a block of 4.5 in, gauged on its deck: metal gone at the intake edge',
    'solid geometry: manifold-3d, thickness read off the solid',
    [0.01, 'in', 2e-6],
    () => byCorners().atIntakeEdgeIn,
  ),
  check(
    'the same: metal gone at the exhaust edge',
    'solid geometry: manifold-3d; 0.010 + 6·tan 1°',
    [0.01 + 6 * Math.tan(rad(1)), 'in', 2e-6],
    () => byCorners().atExhaustEdgeIn,
  ),
  check(
    '1° gone at the exhaust edge: height of a place 3 in across and 1 in up over the deck now',
    'vectors: (1, 3)·(cos 1°, −sin 1°)',
    [Math.cos(rad(1)) - 3 * Math.sin(rad(1)), 'in', 1e-12],
    () =>
      heightFromDeckNowIn(must(deckNow(goneByCut(exhaustCut(0, 1)), 'exhaust', W)), {
        fromShallowEdgeIn: 3,
        heightFromNewDeckIn: 1,
      }),
  ),
]

export const headNow = { title: '12. The head as it is now', checks: [...known, ...solids] }
