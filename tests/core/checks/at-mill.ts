import { cutDegrees } from '@/lib/core/at-mill/cut-at-step'
import { ccAfterCut } from '@/lib/core/at-mill/known-cc'
import { headEstimate } from '@/lib/core/at-mill/head-estimate'
import { stateAtMill, type StateAtMill } from '@/lib/core/at-mill/state-at-mill'
import type { Rate } from '@/lib/core/rate/rate'
import type { CutFacts } from '@/lib/core/rate/shop-cut'
import { check, type Check } from './check'

const rate: Rate = { ccPerThou: 0.16, uCcPerThou: 0.01, cuts: 3, prior: 'outline' }
const left = ccAfterCut({ cc: 63, uCc: 0.1 }, 10, rate, 0.5)
const believed: Rate = { ccPerThou: 1 / 6, uCcPerThou: 0.05 / 6, cuts: 0, prior: 'outline' }
const taught = headEstimate({
  chambers: [{ chamber: '1', before: { meanCc: 80, uCc: 0.1 }, since: { meanCc: 78.4, uCc: 0.1 } }],
  depthThou: 10,
  uDepthThou: 0.5,
  rate: believed,
})

type Reading = CutFacts['readings'][number]
let seq = 0
const read = (stepId: Reading['step']['stepId'], kind: Reading['kind'], point: string, value: number): Reading => ({
  step: { stepId, occurrence: '', orderId: null },
  kind,
  point,
  value,
  text: String(value),
  notTaken: null,
  id: `reading ${seq}`,
  seq: (seq += 1),
})
const cuts: CutFacts = {
  readings: [
    read('chambers', 'cc', '1', 64),
    read('chambers', 'cc', '2', 64),
    read('flat-cut', 'cut-depth', '', 0.01),
    read('flat-cut', 'cc', 'at-stop', 62.8),
  ],
  events: [],
  orders: [],
  deck: { deepEdge: 'exhaust', milledWidthIn: null, deckLengthIn: null, inset: null },
  burette: { divisionCc: 0, repeatabilityCc: 0.3 },
}
const plan = { depthAtCentroidIn: 0.02, flatIn: 0.02 }
const atStop = (): StateAtMill => {
  const state = stateAtMill({ cuts, plan, centroidShare: null, rate, depthErrorThou: 0.5 })
  if (!state) throw new Error('Its chambers were read.')
  return state
}
/**
 * Loss of chamber 1: 1.2 read with u² = 0.09 + 0.09, 1.6 believed with (10·0.01)² + (0.16·0.5)² = 0.0164; innovation 0.4 with
 * 0.1964. Of the mean 64 − loss: covariance with what chamber 1 reads 0.09/2 + 0.0164 = 0.0614.
 */
const stop = 'by hand: gain 0.0614/0.1964 of 0.4 over the 62.4 expected'

const figures: readonly Check[] = [
  check('63 cc, 10 thou at 0.16 cc per thou: left', 'by hand: 63 − 1.6', [61.4, 'cc', 1e-12], () => left.cc),
  check('the same: standard uncertainty', 'by hand: √(0.1² + 0.1² + 0.08²)', [0.1624808, 'cc', 1e-7], () => left.uCc),
  check(
    '10 thou took 80.0 to 78.4 cc on this head: rate',
    'by hand: u² = 0.02 + (0.166667·0.5)² = 0.0269444; gain 6.94444e-4/0.0338889',
    [0.1653005, 'cc/thou', 1e-6],
    () => taught?.rate.ccPerThou ?? NaN,
  ),
  check('two chambers of 64, 10 thou, stop at 62.8: mean', stop, [62.52505, 'cc', 1e-5], () => atStop().mean.cc),
  check(
    'the same: standard uncertainty',
    'by hand: √(0.045 + 0.0164 − 0.0614²/0.1964)',
    [0.205438, 'cc', 1e-5],
    () => atStop().mean.uCc,
  ),
  check(
    'the same: covariance of volume and rate',
    'by hand: −10·0.0001·(1 − 0.0614/0.1964)',
    [-0.000687373, '', 1e-9],
    () => atStop().mean.covCcPerThou,
  ),
  check(
    'the same: rate',
    'by hand: noise² 0.18 + 0.08², gain 0.01/0.1964, of −0.4 cc over 10 thou',
    [0.1579633, 'cc/thou', 1e-6],
    () => atStop().rate.ccPerThou,
  ),
  check(
    '0.061088 in over 7 in: degrees',
    'four-figure table: tan 0.5° = 0.0087269',
    [0.5, '°', 1e-5],
    () => cutDegrees(0.061088, 7) ?? 0,
  ),
]

export const atMill = { title: '4. At the mill', checks: figures }
