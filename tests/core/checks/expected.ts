import { fraction, number, type Fraction } from 'mathjs'
import { median as theirMedian } from 'simple-statistics'
import { uAfterCut } from '@/lib/core/expected/chamber'
import { median } from '@/lib/core/expected/compare'
import { depthAtCorner, fourthCorner } from '@/lib/core/expected/corner'
import { fromLiftBelow, lineAt } from '@/lib/core/expected/flow'
import { defaultExpectedLimits } from '@/lib/core/expected/limits'
import { seatDepthAfter } from '@/lib/core/expected/seat-depth'
import { must } from '@/lib/core/errors'
import { shimChoice } from '@/lib/core/springs/shim-choice'
import { usableLift } from '@/lib/core/springs/usable-lift'
import { springOfValve, type SpringFacts } from '@/lib/core/valve-sheet/spring'
import { circlePoints, newDeck, rad, type V3 } from '../clearance/vectors'
import { asDoubles, check, type Check } from './check'

const exact = (text: string): Fraction => fraction(text) as Fraction
const inDoubles = (value: Fraction): readonly [number, string, number] => [
  number(value),
  'in',
  asDoubles(number(value)),
]

const W = 7

/** Lowest point over the new deck of a circle whose nearest point lay so deep under the old one, walked round. */
function walkedRound(depthIn: number, flatIn: number, deg: number, valveDeg: number, sinkIn: number): number {
  const lean = rad(valveDeg)
  const axis: V3 = [Math.sin(lean), 0, -Math.cos(lean)]
  const round = (at: V3) => circlePoints(at, axis, 1, 72_000)
  const lowest = round([3, 0, 0]).reduce((least, [, , z]) => Math.min(least, z), Infinity)
  const up = depthIn - lowest
  // Sunk: against the way the valve opens.
  const centre: V3 = [3 - sinkIn * axis[0], 0, up - sinkIn * axis[2]]
  const deck = newDeck(flatIn, W * Math.tan(rad(deg)), W)
  return round(centre).reduce((least, [x, , z]) => Math.min(least, deck.height([x, z])), Infinity)
}

const seats: readonly Check[] = (
  [
    [0.105, 0.02, 0, 0, 0.004],
    [0.105, 0.02, 0, 23, 0.004],
    [0.13, 0.02, 1, 15, 0],
    [0.13, 0.01, 0.5, -10, 0.006],
    [0.2, 0.005, 2, 4, 0.003],
  ] as const
).map(([depthIn, flatIn, deg, valveDeg, sinkIn]) =>
  check(
    `seat ${depthIn} deep, valve at ${valveDeg}°, sunk ${sinkIn}; ${flatIn} flat and ${deg}°: depth after`,
    'numeric: walked round in 72,000 steps',
    [walkedRound(depthIn, flatIn, deg, valveDeg, sinkIn), 'in', 1e-8],
    () =>
      seatDepthAfter(
        depthIn,
        { shallowIn: flatIn, deepIn: flatIn + W * Math.tan(rad(deg)) },
        { xIn: 3, radiusIn: 1, valveAngleDeg: valveDeg },
        W,
        sinkIn,
      ) ?? NaN,
  ),
)

/** Corners of one plane by vectors: a + s·u + t·v at the four ends. */
const plane = { a: 4.5, u: -0.02, v: 0.003 }

const expectations: readonly Check[] = [
  check(
    '4.500, 4.480, 4.503 of a plane: the fourth corner',
    'by vectors: a + u + v',
    [plane.a + plane.u + plane.v, 'in', 1e-12],
    () => fourthCorner([plane.a + plane.u, plane.a + plane.v], plane.a),
  ),
  check(
    'middle of 63.8, 64.0, 6.39, 63.9',
    'simple-statistics',
    [theirMedian([63.8, 64, 6.39, 63.9]), 'cc', 1e-12],
    () => median([63.8, 64, 6.39, 63.9]),
  ),
  // 0.09 + 0.09 + (0.16·0.5)² + (0.03·0.16·20)² + (0.008·20)² = 0.09 + 0.09 + 0.0064 + 0.009216 + 0.0256
  check('chamber after 20 thou: uncertainty', 'by hand: √0.221216', [Math.sqrt(0.221216), 'cc', 1e-12], () =>
    uAfterCut(
      { uBeforeCc: 0.3, uReadCc: 0.3 },
      { ccPerThou: 0.16, uCcPerThou: 0.008, priorCcPerThou: 0.16, betweenHeadPart: 0.03 },
      20,
      0.5,
    ),
  ),
  check('168 cfm at 0.300, 190 at 0.500: on the line at 0.400', 'by hand: half way', [179, 'cfm', 1e-9], () =>
    lineAt({ liftIn: 0.3, cfm: 168 }, { liftIn: 0.5, cfm: 190 }, 0.4),
  ),
  check(
    '168 cfm at 0.300: most at 0.400',
    'by hand: 1.15·168·4/3',
    [257.6, 'cfm', 1e-9],
    () => fromLiftBelow({ liftIn: 0.3, cfm: 168 }, 0.4, defaultExpectedLimits).high ?? NaN,
  ),
  check(
    '168 cfm at 0.300: least at 0.400',
    'by hand: 0.85·168',
    [142.8, 'cfm', 1e-9],
    () => fromLiftBelow({ liftIn: 0.3, cfm: 168 }, 0.4, defaultExpectedLimits).low,
  ),
  // 0.083 less a tenth of the 0.063 that the edges differ by.
  check(
    '0.020 and 0.083 at the edges of 7 in, touched 0.7 in inside the deep one',
    'by hand: 0.083 − 0.063/10',
    [0.0767, 'in', 1e-12],
    () => depthAtCorner(true, { shallowIn: 0.02, deepIn: 0.083 }, { edgeInsetIn: 0.7, milledWidthIn: 7 }) ?? NaN,
  ),
  check(
    'and inside the shallow one',
    'by hand: 0.020 + 0.063/10',
    [0.0263, 'in', 1e-12],
    () => depthAtCorner(false, { shallowIn: 0.02, deepIn: 0.083 }, { edgeInsetIn: 0.7, milledWidthIn: 7 }) ?? NaN,
  ),
  ...seats,
]

const fit = {
  retainerToSealIn: 0.642,
  installedHeightIn: 1.8,
  coilBindIn: 1.06,
  liftIn: 0.55,
  retainerMarginIn: 0.05,
  coilBindMarginIn: 0.06,
}
const asked = { installedHeightIn: 1.8, liftIn: 0.55, shimsIn: [0.015, 0.03, 0.06] }
const choice = (seatLbf: number, wantedLbf: number, rateLbfPerIn: number) =>
  must(shimChoice({ ...asked, seatLbf, wantedLbf, rateLbfPerIn }))

/** One intake valve of the sheet: heights read before, pressures typed now, rate left to be worked out. */
const atValve: SpringFacts = {
  here: { 'seat-pressure|1-intake': 110, 'open-pressure|1-intake': 330 },
  before: {
    'installed-height|1-intake': 1.8,
    'coil-bind|1-intake': 1.06,
    'retainer-to-seal|1-intake': 0.9,
    'shims|1-intake': 0.015,
  },
  limits: defaultExpectedLimits,
  liftIn: { intake: 0.55, exhaust: null },
  wanted: { intakeSeatPressureLbf: { value: 125, text: '125', unit: 'lbf', from: 'job' } },
  shimsIn: [0.015, 0.03, 0.06],
}
const shimAt = () => {
  const { shim } = springOfValve('1-intake', atValve)
  return shim?.ok ? shim.value : null
}

const springFigures: readonly Check[] = [
  check(
    '0.642 to the seal, margin 0.050: usable lift',
    'mathjs, exact fractions',
    inDoubles(exact('0.642').sub(exact('0.05'))),
    () => must(usableLift(fit)).usableIn,
  ),
  check(
    'installed 1.800, coil bind 1.060, margin 0.060: usable lift',
    'mathjs, exact fractions',
    inDoubles(exact('1.8').sub(exact('1.06')).sub(exact('0.06'))),
    () => must(usableLift({ ...fit, retainerToSealIn: 0.9 })).usableIn,
  ),
  check(
    '110 lbf, 125 wanted, 400 lbf/in: shim that would be right',
    'mathjs, exact fractions',
    inDoubles(exact('15').div(exact('400'))),
    () => choice(110, 125, 400).idealIn,
  ),
  check(
    'of 0.015, 0.030, 0.060, one or two: nearest to 0.0375',
    'by hand: 0.030, as near as 0.045 and thinner',
    [0.03, 'in', 1e-12],
    () => choice(110, 125, 400).totalIn,
  ),
  check(
    'nearest to 0.050',
    'by hand: 0.045 = 0.015 + 0.030',
    [0.045, 'in', 1e-12],
    () => choice(100, 120, 400).totalIn,
  ),
  check(
    '110 lbf with 0.030 at 400 lbf/in: on the seat',
    'by hand: 110 + 12',
    [122, 'lbf', 1e-9],
    () => choice(110, 125, 400).seatLbf,
  ),
  check('and at 0.550 lift', 'by hand: 122 + 220', [342, 'lbf', 1e-9], () => choice(110, 125, 400).openLbf),
  // The rate from the pressures: (330 − 110)/0.550 = 400, so the same shim as above; 1.800 − 0.030 = 1.770;
  // 1.770 − 1.060 − 0.060 = 0.650.
  check(
    'valve sheet: 110 lbf on the seat, 330 open at 0.550, 125 wanted: open with the shim',
    'by hand: (330 − 110)/0.550 = 400; 110 + 12 + 220',
    [342, 'lbf', 1e-9],
    () => shimAt()?.openLbf ?? NaN,
  ),
  check(
    'and installed 1.800, coil bind 1.060: usable lift with the shim',
    'by hand: 1.800 − 0.030 − 1.060 − 0.060',
    [0.65, 'in', 1e-12],
    () => must(shimAt()?.usable ?? usableLift({ ...fit, liftIn: null })).usableIn,
  ),
  check(
    'installed 1.800 with a shim of 0.015, now 0.045 in: installed',
    'by hand: 1.800 − (0.045 − 0.015)',
    [1.77, 'in', 1e-12],
    () =>
      springOfValve('1-intake', { ...atValve, here: { ...atValve.here, 'shims|1-intake': 0.045 } }).installedHeightIn ??
      NaN,
  ),
]

export const expectedFigures = { title: '17. What a reading is expected to be', checks: expectations }
export const springs = { title: '18. Springs', checks: springFigures }
