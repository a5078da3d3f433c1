import type { CastingFacts } from '@/lib/core/casting/figures'
import type { EngineFacts } from '@/lib/core/engine/figures'
import { must } from '@/lib/core/errors'
import { planRecordOf, type PlanChoiceFigures, type PlanInputs } from '@/lib/core/options/plan-record-of'
import { check, type Check } from './check'

/** The engine of Circle Track, May 2004, as a 90° V with valves at 23°; the stroke is not printed there. */
const engine: EngineFacts = {
  layout: 'v',
  camInHead: false,
  boreIn: 4,
  strokeIn: 3.48,
  gasketBoreIn: 4,
  gasketThicknessIn: 0.02,
  deckClearanceIn: 0.05,
  pistonDishCc: 5,
  bankAngleDeg: 90,
  intakeLiftIn: 0.5,
  exhaustLiftIn: 0.5,
}
const casting: CastingFacts = {
  openingAreaIn2: 10.1706,
  openingCentreIn: 4.445,
  milledWidthIn: 7,
  intakeValveIn: 2.05,
  exhaustValveIn: 1.6,
  intakeValveAngleDeg: 23,
  exhaustValveAngleDeg: 23,
  intakeFaceDeg: 10,
}
const ground: PlanInputs = {
  heads: [{ tag: 'T-0001', chambersCc: [70, 70, 70, 70], thicknessIn: null }],
  presentNominal: false,
  targetCc: 64,
  toleranceCc: 0.5,
  thouPerCc: 6,
  rateWords: '',
  marginCc: 1,
  limits: {
    angleCautionDeg: 0.5,
    angleLimitDeg: 1,
    thicknessLeastIn: null,
    classFlatOnly: false,
    classMinCc: null,
    classMaxCutIn: null,
  },
  casting,
  engine,
  deepEdge: 'exhaust',
  ptvLeastIn: { intake: 0.08, exhaust: 0.1 },
}
const flatCut: PlanChoiceFigures = {
  kind: 'flat',
  splitBy: 'margin',
  flatIn: null,
  angleIn: null,
  angleDeg: null,
  stopAtIn: null,
  sinkIn: null,
}
const record = (more: Partial<PlanChoiceFigures> = {}, on: PlanInputs = ground) =>
  must(planRecordOf(on, { ...flatCut, ...more }))
const compound: PlanInputs = { ...ground, targetCc: 60, toleranceCc: 0.5 }

const checks: readonly Check[] = [
  check(
    '70 cc to 64 at 6 thou per cc: flat part',
    'common practice: 6·6 = 36 thou',
    [0.036, 'in', 1e-12],
    () => record().flatIn,
  ),
  check(
    'ratio before',
    'Circle Track, May 2004; stroke not printed',
    [9.01, '', 0.02],
    () => record().compressionBefore ?? NaN,
  ),
  check('ratio after', 'by hand: 1 + 716.63/(64 + 19.415)', [9.591, '', 0.001], () => record().compressionAfter ?? NaN),
  check('off the intake side', 'derived: 0.036·1.233', [0.044388, 'in', 0.00003], () => record().intakeSideIn ?? NaN),
  check('off the rails', 'derived: 0.036·1.717', [0.061812, 'in', 0.00003], () => record().intakeRailsIn ?? NaN),
  check(
    'piston-to-valve loss, intake',
    'common practice: a flat cut takes its own depth',
    [0.036, 'in', 1e-12],
    () => record().ptvLossIntakeIn ?? NaN,
  ),
  check(
    'piston-to-valve loss, exhaust',
    'common practice: a flat cut takes its own depth',
    [0.036, 'in', 1e-12],
    () => record().ptvLossExhaustIn ?? NaN,
  ),
  check(
    'seats to be sunk 10 thou: seat work adds',
    'by hand: 0.5409 + 0.3295',
    [0.8704, 'cc', 0.0001],
    () => record({ sinkIn: 0.01 }).seatWorkGivesCc,
  ),
  check(
    'the same: flat part',
    'by hand: (6 + 0.8704)·6',
    [0.0412224, 'in', 1e-6],
    () => record({ sinkIn: 0.01 }).flatIn,
  ),
  check(
    'the same: piston-to-valve loss',
    'by hand: 0.0412224 − 0.010·cos 23°',
    [0.0320174, 'in', 1e-6],
    () => record({ sinkIn: 0.01 }).ptvLossIntakeIn ?? NaN,
  ),
  check(
    '10 cc with 20 thou flat: at the deep edge',
    'common practice: 63 thou',
    [0.063, 'in', 1e-5],
    () => record({ kind: 'angle-flat', splitBy: 'flat', flatIn: 0.02 }, compound).angleIn,
  ),
  check(
    'the same: finished',
    'by hand',
    [60, 'cc', 1e-9],
    () => record({ kind: 'angle-flat', splitBy: 'flat', flatIn: 0.02 }, compound).predictedFinishedCc ?? NaN,
  ),
]

export const bench = { title: '11. What follows from a plan', checks }
