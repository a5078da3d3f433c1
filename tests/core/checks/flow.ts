import { unit } from 'mathjs'
import psychrolib from 'psychrolib'
import { must } from '@/lib/core/errors'
import { airDensityKgM3, densityLbFt3FromKgM3 } from '@/lib/core/flow/air-density'
import { compareFlow, type FlowBand } from '@/lib/core/flow/compare'
import { flowAt, meanFlow, monotoneCurve } from '@/lib/core/flow/curve'
import { dischargeCoefficients } from '@/lib/core/flow/discharge'
import { exhaustToIntake } from '@/lib/core/flow/exhaust-to-intake'
import { powerEstimateHp } from '@/lib/core/flow/power-estimate'
import { convertFlow, correctForLeak } from '@/lib/core/flow/pressure'
import { correctedPoints } from '@/lib/core/flow/run'
import type { FlowConditions, FlowRun } from '@/lib/core/flow/types'
import { idealFlowCfmPerIn2, idealVelocityFps, meanVelocityFps } from '@/lib/core/flow/velocity'
import { check, type Check } from './check'
import { d3FlowAt, d3MeanFlow, type Reading } from './d3-curve'

const moss = 'T. Moss Porting'
const acgih = 'ACGIH, Industrial Ventilation: V = 4005·√VP'

const pressures: readonly Check[] = [
  check(
    'flow at 28 inH₂O of what it is at 10',
    'by hand: √2.8; 1.6733² = 2.79993',
    [1.6733, '', 0.00005],
    () => must(convertFlow(100, 10, 28)) / 100,
  ),
  check(
    'flow at 28 inH₂O of what it is at 25',
    'by hand: √1.12; 1.0583² = 1.12',
    [1.0583, '', 0.00005],
    () => must(convertFlow(100, 25, 28)) / 100,
  ),
  check('250 cfm at 28 inH₂O, leak of 3 at 10', 'by hand: 250 − 3·1.67332', [244.98, 'cfm', 0.0001], () =>
    correctForLeak(250, 28, 3, 10),
  ),
  check('air speed of 28 inH₂O', moss, [21190, 'ft/min', 5], () => must(idealVelocityFps(28)) * 60),
  check('the same, a second', moss, [353, 'ft/s', 0.5], () => idealVelocityFps(28)),
  ...[1, 4, 10, 28].map((inH2O) =>
    check(
      `air speed of ${inH2O} inH₂O`,
      acgih,
      [4005 * Math.sqrt(inH2O), 'ft/min', 0.0002 * 4005 * Math.sqrt(inH2O)],
      () => must(idealVelocityFps(inH2O)) * 60,
    ),
  ),
  check(
    'air speed of 28 inH₂O',
    'SI: √(2·Δp/ρ), pound and foot by mathjs 15; the trade’s rounded 1096.7 stands a tenth of a per cent under it',
    [
      unit(Math.sqrt((2 * 28 * 249.0889) / unit(0.075, 'lb/ft^3').toNumber('kg/m^3')), 'm/s').toNumber('ft/s'),
      'ft/s',
      0.36,
    ],
    () => idealVelocityFps(28),
  ),
  check('ideal flow through 2.1 in² at 28 inH₂O', moss, [309, 'cfm', 0.5], () => must(idealFlowCfmPerIn2(28)) * 2.1),
  check('ideal flow of a square inch at 28 inH₂O', 'by hand: 1096.7·√(28/0.075)/144', [147.15, 'cfm', 0.005], () =>
    idealFlowCfmPerIn2(28),
  ),
  check('the same in air of 15 °C, 1.225 kg/m³', 'derived: 145.7 on the same constant', [145.7, 'cfm', 0.05], () =>
    idealFlowCfmPerIn2(28, densityLbFt3FromKgM3(1.225)),
  ),
  check('309 cfm through 2.1 in²: mean speed', moss, [353, 'ft/s', 0.5], () => meanVelocityFps(309, 2.1)),
  check(
    '240 cfm through 2 in²: mean speed',
    'mathjs 15 units',
    [unit(240, 'ft^3/minute').toNumber('ft^3/s') / unit(2, 'sqin').toNumber('sqft'), 'ft/s', 1e-9],
    () => meanVelocityFps(240, 2),
  ),
]

const input = { flowCfm: 250, testPressureInH2O: 28, valveDiameterIn: 2.02, liftIn: 0.5 }
const thatDay = () => must(dischargeCoefficients({ ...input, densityLbFt3: densityLbFt3FromKgM3(1.2041) }))
const dropPa = 28 * 249.0889
const areaM2 = Math.PI * 2.02 * 0.5 * 0.0254 ** 2
const incompressible = areaM2 * Math.sqrt((2 * dropPa) / 1.2041)
/** Saint-Venant and Wantzel, flow counted at the density upstream. */
function isentropic(): number {
  const [k, ratio] = [1.4, (101_325 - dropPa) / 101_325]
  const speed = Math.sqrt(((2 * k) / (k - 1)) * (101_325 / 1.2041) * (1 - ratio ** ((k - 1) / k)))
  return areaM2 * ratio ** (1 / k) * speed
}
const coefficients: readonly Check[] = [
  check(
    '2.02 in valve, 0.500 lift, 250 cfm, 1.2041 kg/m³: on the curtain',
    'derived: SI, incompressible',
    [0.5355, '', 0.001],
    () => thatDay().curtain,
  ),
  check(
    'the same against the isentropic ideal',
    'derived: Saint-Venant and Wantzel',
    [0.5564, '', 0.001],
    () => (thatDay().curtain * incompressible) / isentropic(),
  ),
  check('the same on the valve head', 'by hand: 0.5355·4·0.5/2.02', [0.5302, '', 0.001], () => thatDay().head),
  check('lift of a quarter of the diameter: curtain over head', 'by hand: π·D·D/4 is the head', [1, '', 1e-12], () => {
    const { curtain, head } = must(dischargeCoefficients({ ...input, liftIn: 2.02 / 4 }))
    return curtain / head
  }),
  check(
    'standard air: on the curtain',
    'by hand: 250/(3.17301·147.15)',
    [0.53544, '', 0.00005],
    () => must(dischargeCoefficients(input)).curtain,
  ),
]

psychrolib.SetUnitSystem(psychrolib.SI)
const weather = [
  [0, 101_325, 30],
  [10, 85_000, 60],
  [20, 95_000, 0],
  [20, 101_325, 50],
  [30, 104_000, 100],
  [40, 101_325, 60],
] as const
const air: readonly Check[] = [
  check('air of 20 °C, 101,325 Pa, 50 %', 'CIPM-2007', [1.1993, 'kg/m³', 0.00005], () =>
    airDensityKgM3(20, 101_325, 50),
  ),
  check('dry air of 15 °C, 101,325 Pa', 'ISO 2533 standard atmosphere', [1.225, 'kg/m³', 0.001], () =>
    airDensityKgM3(15, 101_325, 0),
  ),
  check('dry air of 0 °C, 101,325 Pa', 'handbook: 1.2929, from memory', [1.2929, 'kg/m³', 0.0005], () =>
    airDensityKgM3(0, 101_325, 0),
  ),
  ...weather.map(([celsius, pascals, percent]) => {
    const damp = psychrolib.GetHumRatioFromRelHum(celsius, percent / 100, pascals)
    const theirs = psychrolib.GetMoistAirDensity(celsius, damp, pascals)
    return check(
      `air of ${celsius} °C, ${pascals / 1000} kPa, ${percent} %`,
      'psychrolib, within 0.1 %',
      [theirs, 'kg/m³', theirs / 1000],
      () => airDensityKgM3(celsius, pascals, percent),
    )
  }),
  check(
    '1.2041 kg/m³ in pounds and feet',
    'mathjs 15 units',
    [unit(1.2041, 'kg/m^3').toNumber('lb/ft^3'), 'lb/ft³', 1e-12],
    () => densityLbFt3FromKgM3(1.2041),
  ),
]

const readings: readonly Reading[] = [
  [0.1, 64.1],
  [0.2, 131.8],
  [0.3, 190.2],
  [0.4, 233.7],
  [0.5, 251],
  [0.6, 249.2],
  [0.65, 250.3],
]
const curveOf = (points: readonly Reading[]) =>
  must(monotoneCurve(points.map(([liftIn, flowCfm]) => ({ liftIn, flowCfm }))))
const three: readonly Reading[] = [
  [0, 0],
  [0.1, 60],
  [0.2, 110],
]
const slopes = [
  ['first', 'by hand: (3·600 − 550)/2', 625],
  ['middle', 'by hand: chords 600 and 500, their parabola’s slope', 550],
  ['last', 'by hand: (3·500 − 550)/2', 475],
] as const
const drawn = 'd3-shape 3, curveMonotoneX'
const curves: readonly Check[] = [
  ...[0.13, 0.26, 0.35, 0.46, 0.55, 0.64].map((liftIn) =>
    check(`flow curve at ${liftIn} in`, drawn, [d3FlowAt(readings, liftIn), 'cfm', 1e-9], () =>
      flowAt(curveOf(readings), liftIn),
    ),
  ),
  ...slopes.map(([place, source, printed], at) =>
    check(
      `curve through 0, 60, 110 cfm: ${place} slope`,
      source,
      [printed, 'cfm/in', 1e-9],
      () => curveOf(three)[at]?.slope ?? NaN,
    ),
  ),
  ...(
    [
      [0.1, 0.65],
      [0.25, 0.55],
    ] as const
  ).map(([from, to]) =>
    check(
      `mean flow from ${from} to ${to} in`,
      'numeric integration of d3-shape’s curve, 20,000 steps',
      [d3MeanFlow(readings, from, to, 20_000), 'cfm', 1e-5],
      () => meanFlow(curveOf(readings), from, to),
    ),
  ),
  check('mean flow of a straight line, 60 to 180 cfm', 'by hand: its middle', [120, 'cfm', 1e-9], () =>
    meanFlow(
      curveOf([
        [0.1, 60],
        [0.3, 180],
      ]),
      0.1,
      0.3,
    ),
  ),
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
const run = (points: readonly Reading[], more: Partial<FlowConditions> = {}): FlowRun => ({
  conditions: { ...conditions, ...more },
  points: points.map(([liftIn, flowCfm]) => ({ liftIn, flowCfm, notTaken: null })),
})
const at10 = { testPressureInH2O: 10 }
/** Straight lines of 500 and 550 cfm an inch; they share 0.2 to 0.5 in. */
const straight = () =>
  must(
    compareFlow(
      run([
        [0.1, 50],
        [0.2, 100],
        [0.35, 175],
        [0.5, 250],
      ]),
      run([
        [0.2, 110],
        [0.4, 220],
        [0.6, 330],
      ]),
    ),
  )
const mean = (band: FlowBand) => straight().means.find((one) => one.band === band)
const ratio = (intake: FlowRun, exhaust: FlowRun) => must(exhaustToIntake(intake, exhaust))[0]?.percent ?? NaN
/** 2·√2·1 % of 200 cfm is 5.657 cfm: how many of four differences the bench could show by itself. */
const withinBench = () =>
  [205.65, 194.35, 205.66, 194.34].filter(
    (after) => must(compareFlow(run([[0.3, 200]]), run([[0.3, after]]))).rows[0]?.withinRepeatability,
  ).length

const runs: readonly Check[] = [
  check('exhaust to intake, 93 and 121 cfm at 10 inH₂O', 'measured pair in print', [76.9, '%', 0.05], () =>
    ratio(run([[0.5, 121]], at10), run([[0.5, 93]], { ...at10, port: 'exhaust' })),
  ),
  check(
    'the same, the intake read at 28: 202.47 cfm',
    'measured pair in print, times 1.6733 by hand',
    [76.9, '%', 0.05],
    () => ratio(run([[0.5, 202.47]]), run([[0.5, 93]], { ...at10, port: 'exhaust' })),
  ),
  check(
    '250 cfm with 2 cfm of leak',
    'by hand',
    [248, 'cfm', 1e-12],
    () => must(correctedPoints(run([[0.5, 250]], { leakCfm: 2 }), null))[0]?.flowCfm ?? NaN,
  ),
  check(
    '60 before, 63 after',
    'by hand: 3/60',
    [5, '%', 1e-12],
    () => must(compareFlow(run([[0.1, 60]]), run([[0.1, 63]]))).rows[0]?.diffPercent ?? NaN,
  ),
  check(
    'straight lines, low third 0.2–0.3 in: mean before',
    'by hand: 500·0.25',
    [125, 'cfm', 1e-9],
    () => mean('low')?.beforeCfm ?? NaN,
  ),
  check('middle third', 'by hand: 500·0.35', [175, 'cfm', 1e-9], () => mean('middle')?.beforeCfm ?? NaN),
  check('high third', 'by hand: 500·0.45', [225, 'cfm', 1e-9], () => mean('high')?.beforeCfm ?? NaN),
  check('whole span: mean after', 'by hand: 550·0.35', [192.5, 'cfm', 1e-9], () => mean('whole')?.afterCfm ?? NaN),
  check(
    '100 cfm at 10 inH₂O, brought to a run at 28',
    'by hand: 100·√2.8',
    [167.332, 'cfm', 0.0005],
    () => must(compareFlow(run([[0.3, 100]], at10), run([[0.3, 170]]))).rows[0]?.beforeCfm ?? NaN,
  ),
  check(
    '±5.65 and ±5.66 cfm of 200, bench 1 %: within its repeatability',
    'by hand: 2·√2·2 cfm = 5.657; common practice for the 1 %',
    [2, '', 0],
    withinBench,
  ),
]

const power: readonly Check[] = [
  check('8 cylinders of 126 cfm at 10 inH₂O', 'Denny’s Hangout', [433, 'hp', 0.5], () => powerEstimateHp(126, 10, 8)),
  check('a cfm at 28 inH₂O, one cylinder', 'by hand: 0.43·√(10/28)', [0.257, 'hp', 0.0005], () =>
    powerEstimateHp(1, 28, 1),
  ),
]

export const flow = {
  title: '9. Flow',
  checks: [...pressures, ...coefficients, ...air, ...curves, ...runs, ...power],
}
