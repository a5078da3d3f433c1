import { erf } from 'mathjs'
import { linearRegression } from 'simple-statistics'
import { must } from '@/lib/core/errors'
import { learnRate, type RateCut } from '@/lib/core/rate/learn'
import { advisePass, smallestKnownTo, type PassInput } from '@/lib/core/rate/next-pass'
import { priorRate, rateForHead, thouPerCc, type PriorSource, type Rate } from '@/lib/core/rate/rate'
import { zOfCut } from '@/lib/core/rate/screen'
import { rateOfRecord } from '@/lib/core/rate/rate-of-record'
import { check, type Check } from './check'

const outline: PriorSource = { kind: 'outline', openingAreaIn2: 10.1706 }
const prior = (source: PriorSource) => must(priorRate(source))
const said = (source: PriorSource) => thouPerCc(prior(source))
const eaton = 'Eaton Balancing, Jan 2013: 1/((perimeter/π)²·12.87) in per cc'

const priors: readonly Check[] = [
  check(
    'opening of 10.1706 in²: rate',
    'common practice: 6 thou per cc on small wedge chambers',
    [6, 'thou/cc', 0.0001],
    () => said(outline).thouPerCc,
  ),
  check(
    'the same: standard uncertainty',
    'by hand: 5 % of 6',
    [0.3, 'thou/cc', 0.0001],
    () => said(outline).uThouPerCc,
  ),
  check('3 cc of it: depth', 'common practice: 18 thou', [18, 'thou', 0.001], () => 3 / prior(outline).ccPerThou),
  check(
    'perimeter of 11.3 in: depth of a cc',
    eaton,
    [1000 / ((11.3 / Math.PI) ** 2 * 12.87), 'thou/cc', 1e-9],
    () => said({ kind: 'perimeter', perimeterIn: 11.3 }).thouPerCc,
  ),
  check(
    'the same: standard uncertainty',
    'by hand: 15 % of 6.005706',
    [0.900856, 'thou/cc', 1e-5],
    () => said({ kind: 'perimeter', perimeterIn: 11.3 }).uThouPerCc,
  ),
  check(
    'perimeter of a circle of 3.600 in against its area',
    'handbook: a circle’s area is (perimeter/π)²·π/4',
    [1, '', 0.0001],
    () =>
      prior({ kind: 'perimeter', perimeterIn: Math.PI * 3.6 }).ccPerThou /
      prior({ kind: 'outline', openingAreaIn2: Math.PI * 1.8 ** 2 }).ccPerThou,
  ),
  check(
    'neither known: rate',
    'common practice: 6 thou per cc',
    [6, 'thou/cc', 1e-12],
    () => said({ kind: 'none' }).thouPerCc,
  ),
  check(
    'the same: standard uncertainty',
    'by hand: 25 % of 6',
    [1.5, 'thou/cc', 1e-12],
    () => said({ kind: 'none' }).uThouPerCc,
  ),
  check(
    'record with an opening of 10.1706 in²: rate',
    'common practice: 6 thou per cc',
    [6, 'thou/cc', 0.0001],
    () => thouPerCc(must(rateOfRecord({ openingAreaIn2: 10.1706, perimeterIn: 20 }))).thouPerCc,
  ),
  check(
    'record with nothing but the shop’s own 5 thou per cc: rate',
    'by hand: the shop’s own figure',
    [5, 'thou/cc', 1e-12],
    () => thouPerCc(must(rateOfRecord({ thouPerCc: 5 }))).thouPerCc,
  ),
  check(
    'record with nothing at all: rate',
    'common practice: 6 thou per cc',
    [6, 'thou/cc', 1e-12],
    () => thouPerCc(must(rateOfRecord({}))).thouPerCc,
  ),
  check(
    'head not yet cut: 0.004 and 3 % of 0.1',
    'by hand: 3, 4 and 5',
    [0.005, 'cc/thou', 1e-12],
    () => rateForHead({ ccPerThou: 0.1, uCcPerThou: 0.004, cuts: 9, prior: 'outline' }).uCcPerThou,
  ),
]

const took = (depthThou: number, cc: number): RateCut => ({
  depthThou,
  beforeCc: 80,
  uBeforeCc: 0.1,
  afterCc: 80 - cc,
  uAfterCc: 0.1,
  likeForLike: true,
})
const believed: Rate = { ccPerThou: 1 / 6, uCcPerThou: 0.05 / 6, cuts: 0, prior: 'outline' }
const unknown: Rate = { ...believed, uCcPerThou: 10 }
const tenThou = () => must(learnRate(believed, [took(10, 1.6)], 0.5))
const oneCut = 'by hand: u² = 0.01 + 0.01 + (0.166667·0.5)² = 0.0269444; gain 6.94444e-4/0.0338889'
const shopCuts = [took(6, 1.1), took(10, 1.9), took(12, 2.1), took(18, 3.3), took(25, 4.4), took(30, 5.5)]
const points = shopCuts.map(({ depthThou, beforeCc, afterCc }) => [depthThou, beforeCc - afterCc])
const mirrored = [...points, ...points.map((point) => point.map((value) => -value))]
/** Σd² of the six depths: 36 + 100 + 144 + 324 + 625 + 900 = 2129; each volume is known to √0.02. */
const fitted = Math.sqrt(0.02 / 2129)

const learned: readonly Check[] = [
  check('one cut of 10 thou that took 1.60 cc: rate', oneCut, [0.1653005, 'cc/thou', 1e-6], () => tenThou().ccPerThou),
  check(
    'the same by a shop that has not said how well it sets a depth: rate',
    'by hand: half a thou is customary',
    [0.1653005, 'cc/thou', 1e-6],
    () => must(learnRate(believed, [took(10, 1.6)])).ccPerThou,
  ),
  check(
    'one cut of 10 thou that took 1.60 cc: standard uncertainty',
    'by hand: √(6.94444e-5·0.0269444/0.0338889)',
    [0.00743061, 'cc/thou', 1e-7],
    () => tenThou().uCcPerThou,
  ),
  check(
    'six cuts, nothing believed before: rate',
    'simple-statistics 7: least squares, each point mirrored through the origin',
    [linearRegression(mirrored).m, 'cc/thou', 1e-7],
    () => must(learnRate(unknown, shopCuts, 0)).ccPerThou,
  ),
  check(
    'the same: standard uncertainty',
    'textbook least squares through the origin: σ/√Σd²',
    [fitted, 'cc/thou', 1e-7],
    () => must(learnRate(unknown, shopCuts, 0)).uCcPerThou,
  ),
  check(
    'two heads of 20 thou, 3 % between heads: rate',
    'by hand: prior 1/6 ± 1/120; 3.3 and 3.5 of 20 with (0.02 + 0.0069444)/400 + 0.005²; weights 14400, 10827.1 twice',
    [0.1686687, 'cc/thou', 1e-6],
    () => must(learnRate(believed, [took(20, 3.3), took(20, 3.5)], 0.5, 0.03)).ccPerThou,
  ),
  check(
    'the same: standard uncertainty',
    'by hand: 1/√(14400 + 2·10827.1)',
    [0.0052665, 'cc/thou', 1e-7],
    () => must(learnRate(believed, [took(20, 3.3), took(20, 3.5)], 0.5, 0.03)).uCcPerThou,
  ),
  check(
    '1.3 cc for 20 thou by an outline, each cc ±0.15: how far off',
    'by hand: −2.033333/√(0.045 + 0.0069444 + 0.01 + 0.0277778)',
    [-6.78827, 'σ', 1e-4],
    () =>
      zOfCut({ ...took(20, 1.3), uBeforeCc: 0.15, uAfterCc: 0.15 }, believed, {
        depthErrorThou: 0.5,
        betweenHeadPart: 0.03,
      }),
  ),
  check(
    'a cut that is not like for like: cuts counted',
    'by hand',
    [6, '', 0],
    () => must(learnRate(unknown, [...shopCuts, { ...took(10, 9), likeForLike: false }], 0)).cuts,
  ),
]

const asked: PassInput = {
  presentCc: 63,
  uPresentCc: 0.1,
  targetCc: 60,
  toleranceCc: 0.5,
  rate: { ccPerThou: 1 / 6, uCcPerThou: 0.0097, cuts: 0, prior: 'outline' },
}
const proven: Rate = { ccPerThou: 1 / 6, uCcPerThou: 0.002, cuts: 8, prior: 'outline' }
const poor: Rate = { ccPerThou: 0.166508, uCcPerThou: 0.0254, cuts: 0, prior: 'perimeter' }
const coarse: Rate = { ccPerThou: 1 / 6, uCcPerThou: 0.03, cuts: 3, prior: 'perimeter' }
const guess: Rate = { ccPerThou: 1 / 6, uCcPerThou: 1 / 24, cuts: 0, prior: 'none' }

const pass = (more: Partial<PassInput>) => {
  const advice = must(advisePass({ ...asked, ...more }))
  return advice.kind === 'pass' ? advice : { depthThou: 0, nominalThou: 0, leavesCc: asked.presentCc }
}

/** The deepest pass whose risk is half a per cent at most, tried in steps of half a thou by another normal table. */
function deepestSafe(
  roomCc: number,
  uCc: number,
  { ccPerThou: k, uCcPerThou: uK }: Rate,
  uDepth = 0.5,
  cov = 0,
): number {
  const varianceAt = (d: number): number =>
    uCc ** 2 + (uK * d) ** 2 + (k * uDepth) ** 2 + (uK * uDepth) ** 2 - 2 * d * cov
  const risk = (d: number): number => (1 - erf((roomCc - k * d) / Math.sqrt(varianceAt(d)) / Math.SQRT2)) / 2
  let depthThou = 0
  while (risk(depthThou + 0.5) <= 0.005) depthThou += 0.5
  return depthThou
}
const stepped = 'mathjs 15 erf, in steps of half a thou'
const smallest = { cc: 61, uCc: 0.15, classMinimumCc: 59.5 }

const passes: readonly Check[] = [
  check(
    '3 cc at a proven 6 thou per cc: pass',
    'common practice: 18 thou',
    [18, 'thou', 0],
    () => pass({ rate: proven }).depthThou,
  ),
  check('3 cc by an outline: pass', stepped, [deepestSafe(3.5, 0.1, asked.rate), 'thou', 0], () => pass({}).depthThou),
  check(
    '3 cc by a proven rate, to a quarter of a cc: pass',
    stepped,
    [deepestSafe(3.25, 0.05, proven), 'thou', 0],
    () => pass({ rate: proven, uPresentCc: 0.05, toleranceCc: 0.25 }).depthThou,
  ),
  check(
    '7 cc by a poor rate at a mill that is set to 5 thou: pass',
    stepped,
    [deepestSafe(10, 0.1, coarse, 5), 'thou', 0],
    () => pass({ presentCc: 67, toleranceCc: 3, rate: coarse, depthErrorThou: 5 }).depthThou,
  ),
  check(
    '3 cc by an outline, 17.5 thou: should leave',
    'by hand: 63 − 17.5/6',
    [60.0833, 'cc', 0.0001],
    () => pass({}).leavesCc,
  ),
  check(
    '8 cc by a perimeter: pass',
    stepped,
    [deepestSafe(8.5, 0.1, poor), 'thou', 0],
    () => pass({ presentCc: 68, rate: poor }).depthThou,
  ),
  check(
    '8 cc by a perimeter: nominal',
    'by hand: 8/0.166508 = 48.046, down to half a thou',
    [48, 'thou', 0],
    () => pass({ presentCc: 68, rate: poor }).nominalThou,
  ),
  check(
    '6 cc, cc known to the limit of t/2.5: pass',
    stepped,
    [deepestSafe(6.5, 0.2, asked.rate), 'thou', 0],
    () => pass({ presentCc: 66, uPresentCc: 0.2 }).depthThou,
  ),
  check(
    '3 cc by nothing at all: pass',
    'by hand: no more than half of 18',
    [9, 'thou', 0],
    () => pass({ rate: { ...guess, uCcPerThou: 0.001 } }).depthThou,
  ),
  check(
    '10 cc by a guess that two cuts stand behind: pass',
    stepped,
    [deepestSafe(10.5, 0.1, guess), 'thou', 0],
    () => pass({ presentCc: 70, rate: { ...guess, cuts: 2 } }).depthThou,
  ),
  check(
    '10 cc by a poor rate, volume and rate against each other: pass',
    'mathjs 15 erf, in steps of half a thou, −2·d·c in the variance',
    [deepestSafe(10.5, 0.2, poor, 0.5, -0.004), 'thou', 0],
    () => pass({ presentCc: 70, uPresentCc: 0.2, toleranceCc: 0.5, covCcPerThou: -0.004, rate: poor }).depthThou,
  ),
  check(
    'a screened cut that took 4.7 thou per cc: pass',
    stepped,
    [deepestSafe(3.5, 0.1, { ...proven, ccPerThou: 1 / 4.7 }), 'thou', 0],
    () =>
      pass({
        rate: proven,
        ifScreened: [{ presentCc: 63, uPresentCc: 0.1, rate: { ...proven, ccPerThou: 1 / 4.7 } }],
      }).depthThou,
  ),
  check(
    'half a cc of room over the class minimum: how well it must be known',
    'by hand: (0.5 − 0.083333)/2.5758293 = 0.161760; √(0.161760² − 0.001² − 0.083333² − 0.001²)',
    [0.138636, 'cc', 1e-5],
    () => smallestKnownTo(0.5, proven) ?? NaN,
  ),
  check(
    'smallest chamber 1.5 cc over the class minimum: pass',
    stepped,
    [deepestSafe(1.5, 0.15, proven), 'thou', 0],
    () => pass({ rate: proven, smallest }).depthThou,
  ),
  check(
    '1.16 cc at a proven rate: pass',
    'by hand: 6.96 thou, down to half a thou',
    [6.5, 'thou', 0],
    () => pass({ presentCc: 61.16, rate: proven }).depthThou,
  ),
]

export const rates = {
  title: '4. Rate, and the next pass',
  checks: [...priors, ...learned, ...passes],
}
