import { mean, sampleVariance } from 'simple-statistics'
import { chamberMean, headCc, type BuretteFacts } from '@/lib/core/chamber/burette'
import { wildRepeat } from '@/lib/core/chamber/repeatability'
import { matchChambers } from '@/lib/core/chamber/match'
import { must } from '@/lib/core/errors'
import { asDoubles, check, type Check } from './check'

const burette = { divisionCc: 0.2, repeatabilityCc: 0.3 }
const noBurette = { divisionCc: 0, repeatabilityCc: 0 }

/** Twenty readings of one quantity, as printed in the guide to uncertainty. */
const guideReadings = [
  96.9, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95, 101.11, 101.2,
  101.57, 101.84, 102.36, 102.72,
]
const guide = 'JCGM 100:2008 (GUM), 4.4.3, table 1; readings from memory'
const repeats = [62.1, 62.4, 62.2, 62.2, 61.9]
const library = 'simple-statistics 7'
const head = [62, 62.4, 62.2, 61.8]

const one = (readings: readonly number[], facts: BuretteFacts = burette) => must(chamberMean(readings, facts))
const wholeHead = () => must(headCc(head.map((cc) => one([cc]))))
const match = (...volumes: readonly number[]) =>
  must(matchChambers(volumes.map((cc, at) => ({ tag: 'T-0001', chamber: at + 1, cc }))))

const checks: readonly Check[] = [
  check('mean of twenty readings', guide, [100.14, '', 0.006], () => one(guideReadings, noBurette).meanCc),
  check(
    'standard deviation of one of them, pooled with nothing known',
    'JCGM 100:2008 (GUM), 4.4.3: s = 1.49 over 19 degrees; with three more that say 0, by hand √(19/22) of it',
    [1.3847, '', 0.005],
    () => one(guideReadings, noBurette).readingCc,
  ),
  check(
    'standard uncertainty of what lies anywhere within ±4',
    'JCGM 100:2008 (GUM), 4.4.5: 4/√3 = 2.3',
    [2.3, '', 0.05],
    () => one([100, 100], { divisionCc: 8, repeatabilityCc: 0 }).uCc,
  ),
  check('mean of five repeats', library, [mean(repeats), 'cc', asDoubles(62)], () => one(repeats).meanCc),
  check(
    'standard uncertainty of five repeats, division 0.2',
    'simple-statistics 7 for s; ten degrees of 0.1² and four of s², over 14·5, and 0.2²/12',
    [Math.sqrt((0.1 + 4 * sampleVariance(repeats)) / 70 + 0.04 / 12), 'cc', 1e-12],
    () => one(repeats, { ...burette, others: { squaresCc2: 0.2, degrees: 20 } }).uCc,
  ),
  check('range of five repeats', 'by hand: 62.4 − 61.9', [0.5, 'cc', 1e-12], () => one(repeats).rangeCc),
  check(
    'standard uncertainty of two readings, 62.1 and 62.3',
    'by hand: the default 0.3 is a floor; √(0.09/2 + 0.04/12) = √0.0483333',
    [0.2198484, 'cc', 1e-6],
    () => one([62.1, 62.3]).uCc,
  ),
  check(
    'standard uncertainty of one reading alone',
    'by hand: the shop’s 0.3; √(0.09 + 0.04/12) = √0.0933333',
    [0.305505, 'cc', 1e-6],
    () => one([62.1]).uCc,
  ),
  check(
    'standard uncertainty of two readings a cc apart, by the default',
    'by hand: s² = (3·0.09 + 0.5)/4 = 77/400; √(77/800 + 0.04/12) = √0.0995833',
    [0.3155683, 'cc', 1e-6],
    () => one([62, 63]).uCc,
  ),
  check(
    'a repeat after one reading is questioned beyond',
    'by hand: 3·0.3·√2',
    [1.2727922, 'cc', 1e-6],
    () => wildRepeat(66, [63.9], 0.3)?.limitCc ?? NaN,
  ),
  check('mean of a head', library, [mean(head), 'cc', asDoubles(62)], () => wholeHead().meanCc),
  check('spread of a head', 'by hand: 62.4 − 61.8', [0.6, 'cc', 1e-12], () => wholeHead().spreadCc),
  check('smallest chamber of a head', 'by hand', [61.8, 'cc', 0], () => wholeHead().smallestCc),
  check('largest chamber of a head', 'by hand', [62.4, 'cc', 0], () => wholeHead().largestCc),
  check(
    'standard uncertainty of a head of four, each read once',
    'by hand: 0.305505/√4',
    [0.152753, 'cc', 1e-6],
    () => wholeHead().uCc,
  ),
  check(
    'how far the worst chamber lies from the mean: 61, 62, 62, 63.4',
    'by hand: 63.4 − 248.4/4',
    [1.3, 'cc', 1e-12],
    () => match(61, 62, 62, 63.4).outside.at(-1)?.offCc ?? NaN,
  ),
  check(
    'chambers outside half a cc: 61.5 and 62.5',
    'common practice, from memory: ±0.5 cc, the end itself allowed',
    [0, '', 0],
    () => match(61.5, 62.5).outside.length,
  ),
  check(
    'chambers outside half a cc: 61.48 and 62.52',
    'common practice, from memory: ±0.5 cc; each is 0.52 from the mean',
    [2, '', 0],
    () => match(61.48, 62.52).outside.length,
  ),
]

export const chamber = { title: '2. Chamber volume', checks }
