import type { ReadingKind } from '@/lib/core/readings/types'
import * as figures from './figures'
import type { Asked, Found } from './found'
import { pick } from './scatter'

/** What a machinist types when all goes well: plausible, and in keeping with what was read and cut before. */
export type Answer = (found: Found, asked: Asked) => string

const always =
  (text: string): Answer =>
  () =>
    text

const oneOf =
  (...among: readonly [string, ...string[]]): Answer =>
  ({ tag }, { kind }) =>
    pick(`${tag} ${kind}`, among)

/** One a kind: every question that a step can ask has an answer here. */
export const usualAnswers: Readonly<Record<ReadingKind, Answer>> = {
  condition: oneOf('sound', 'sound', 'worn'),
  'came-with': oneOf('bare', 'valves in a box, marked', 'valves and springs, customer’s own', 'head bolts in a bag'),
  photo: always('no photo: the camera is away'),

  crack: always('none'),
  pressure: always('holds'),
  'pressure-held': always('40'),
  'pressure-heat': always('160 °F'),
  'pressure-minutes': always('15'),
  thickness: figures.thickness,
  straightness: figures.straightness,
  'removed-before': figures.removedBefore,
  cc: figures.cc,
  'valves-used': always('shop'),
  'plug-used': always('shop'),
  'seat-depth': figures.seatDepth,
  recession: figures.recession,
  protrusion: figures.protrusion,
  'deck-cc': always('5.0'),

  flow: figures.flow,

  'cut-depth': figures.cutDepth,
  'edge-depth': figures.edgeDepth,
  'touch-off': always('same'),
  'face-depth': always('.020'),
  'intake-choice': oneOf('port-match', 'tell-customer', 'leave'),
  'break-through': always('none'),

  count: always('all'),
  damage: always('none'),
  'vendor-marks': ({ plan }) => (plan ? `${(plan.angleIn * 1000).toFixed(0)} EX` : 'none'),

  'bolt-squared': always('all'),
  'bolt-passes': always('all'),
  'bolt-slotted': ({ plan }) =>
    (plan?.angleDeg ?? 0) > 0.5
      ? `1 to 10, toward the ${plan?.deepEdge === 'exhaust' ? 'intake' : 'exhaust'} edge`
      : 'none',
  'bolt-reach': always('good'),
  dowels: always('home'),

  'top-cut': oneOf('full', 'narrow'),
  'insert-marks': always('none'),
  'leak-test': always('tight'),
  'guide-clearance': figures.ofValves,
  'insert-press': figures.ofValves,
  'seat-angles': oneOf('30 45 60', '15 45 75'),
  'seat-width': figures.ofValves,
  runout: ({ tag }, { point }) => pick(`${tag} runout ${point}`, ['.001', '.0005', '.0015']),
  vacuum: figures.vacuum,
  sink: figures.ofValves,
  'stem-height': figures.ofValves,
  'seat-edge': always('none'),

  'installed-height': figures.ofValves,
  'retainer-to-seal': figures.ofValves,
  'coil-bind': always('1.060'),
  shims: always('0'),
  'seat-pressure': figures.springPressure,
  'open-pressure': figures.springPressure,
  'spring-pressure': figures.springPressure,
  'spring-rate': always('390'),
  'geometry-note': oneOf('told', 'good'),
  'cam-note': oneOf('told', 'good'),
  'trial-fit': oneOf('tried', 'told'),

  'finish-how': oneOf('comparator', 'measured'),
  finish: oneOf('28', '32', '25'),
  'cutter-marks': oneOf('none', 'none', 'outside'),
  ptv: always('told'),
  'ptv-clearance': figures.ofValves,
  inspection: always('pass'),

  'taken-by': always('the customer'),
  side: oneOf('left', 'right'),
  'parts-returned': always('nothing'),

  'work-note': always('as ordered'),
  verdict: always('good'),
}

/** Offered, not owed, and answered all the same: a shop that leaves them out is left wondering. */
export const alsoAnswered: readonly ReadingKind[] = ['valves-used', 'plug-used', 'break-through', 'finish']

/** Filled with "All alike": springs of one box, measured at one of them. */
export const filledAlike: readonly ReadingKind[] = ['coil-bind']

/** What the flow bench is set to, the same for every run, so that runs can be held against each other. */
export const flowConditions = ({ casting }: Found): Readonly<Record<string, string>> => ({
  chamber: '2',
  testPressureInH2O: '28',
  boreFixtureIn: '4.03',
  intakeValveIn: String(casting.intakeValveIn ?? 1.94),
  exhaustValveIn: String(casting.exhaustValveIn ?? 1.5),
  entryFitting: 'radius plate',
  exhaustFitting: 'stub pipe',
  leakCfm: '1.2',
})
