import fc, { type Arbitrary } from 'fast-check'
import { describe } from 'vitest'
import { asLastRead } from '@/lib/core/at-mill/as-last-read'
import { ccBeforeCut, ccOf } from '@/lib/core/at-mill/cc-at'
import {
  checkCutAt,
  cutDegrees,
  cutMeasuredAt,
  cutWantedAt,
  marksFound,
  type CutAgainst,
  type WantedFacts,
} from '@/lib/core/at-mill/cut-at-step'
import { adviseAtMill } from '@/lib/core/at-mill/advice'
import { ownRate } from '@/lib/core/at-mill/own-rate'
import { readsAtBench, readsAtMill } from '@/lib/core/at-mill/reads-to-come'
import { furtherReadings, type HeadRead } from '@/lib/core/at-mill/further-readings'
import { headEstimate } from '@/lib/core/at-mill/head-estimate'
import { ccAfterCut } from '@/lib/core/at-mill/known-cc'
import { touchOffDepth } from '@/lib/core/at-mill/touch-off'
import { chamberChanges } from '@/lib/core/chamber/changes'
import { repeatsOfHead } from '@/lib/core/chamber/repeats'
import { cutSoFarThou, stateAtMill } from '@/lib/core/at-mill/state-at-mill'
import type { Rate } from '@/lib/core/rate/rate'
import type { CutFacts } from '@/lib/core/rate/shop-cut'
import { maybe, near, plain } from './any-figure'
import { holds, holdsFor } from './holds'

const step = fc.record({
  stepId: fc.constantFrom(
    'chambers',
    'open-chamber',
    'thickness',
    'flat-cut',
    'angle-cut',
    'arrival-figures',
    'finished',
  ),
  occurrence: fc.constant(''),
  orderId: fc.constantFrom(null, 'one'),
})
const reading = fc.record({
  step,
  kind: fc.constantFrom('cc', 'cut-depth', 'edge-depth', 'thickness', 'touch-off'),
  id: fc.uuid(),
  point: fc.constantFrom(
    '1',
    '2',
    'at-size',
    'at-stop-2',
    'intake',
    'exhaust',
    'intake-1',
    'exhaust-1',
    'intake-2',
    '',
  ),
  value: maybe(fc.oneof(near(40, 80), near(0, 0.5), near(4, 5))),
  text: fc.constantFrom('', 'new'),
  seq: fc.nat(30),
}) as unknown as Arbitrary<CutFacts['readings'][number]>
const readings = fc.array(reading, { maxLength: 14 })
const burette = fc.record({ divisionCc: near(0, 1), repeatabilityCc: near(0, 1) })
const orders = fc.constantFrom<CutFacts['orders']>(
  [],
  [
    {
      orderId: 'one',
      number: '1',
      vendor: 'A vendor',
      scope: ['angle-cut'],
      angleIn: 0.06,
      flatIn: 0.014,
      sentSeq: 2,
      receivedSeq: 6,
      confirmed: ['angle-cut'],
      seatsIn: false,
    },
  ],
)
const cuts: Arbitrary<CutFacts> = fc.record({
  readings,
  events: fc.constant([]),
  orders,
  deck: fc.record({
    deepEdge: fc.constantFrom('intake' as const, 'exhaust' as const),
    milledWidthIn: maybe(near(1, 20)),
    deckLengthIn: maybe(near(1, 60)),
    inset: fc.option(fc.record({ edgeIn: near(0, 3), endIn: near(0, 3) })),
  }),
  burette,
})
const rate: Arbitrary<Rate> = fc.record({
  ccPerThou: plain(0.02, 1),
  uCcPerThou: plain(0, 0.1),
  cuts: fc.nat(9),
  prior: fc.constantFrom('outline' as const, 'none' as const),
})
const known = fc.record({ cc: plain(1, 400), uCc: fc.oneof(plain(0, 20).map(Math.abs), fc.constantFrom(0, 5e-324)) })
const plan = fc.record({ depthAtCentroidIn: plain(0, 0.2), flatIn: plain(0, 0.2) })
const share = maybe(near(0, 1))

describe('the head at the mill', () => {
  holds(ccOf, [readings, burette])
  holds(ccBeforeCut, [readings, burette])
  holds(ccAfterCut, [known, plain(0, 500), rate, plain(0, 20)])
  const read = known.map(({ cc, uCc }) => ({ meanCc: cc, uCc, rangeCc: 0, count: 2, readingCc: uCc }))
  const across = fc.record({
    chambers: fc
      .array(fc.record({ before: read, since: fc.option(read) }), { maxLength: 4 })
      .map((list) => list.map((one, at) => ({ chamber: String(at + 1), ...one }))),
    depthThou: fc.double({ min: 0, max: 500, noNaN: true }),
    uDepthThou: fc.double({ min: 0, max: 20, noNaN: true }),
    rate,
  })
  holds(headEstimate, [across], 1000)
  const enough = fc.double({ min: 0, max: 1, noNaN: true })
  const further = (head: HeadRead, enoughCc: number) => furtherReadings(head, 0.2, (one) => one.mean.uCc, enoughCc)
  holdsFor('furtherReadings', [across, enough], further, 100)
  holds(touchOffDepth, [readings])
  holds(asLastRead, [readings])
  holdsFor('repeatsOfHead', [cuts], (facts) => repeatsOfHead(facts.readings, chamberChanges(facts)))
  const mill = fc.record({
    cuts,
    plan,
    centroidShare: share,
    rate,
    depthErrorThou: near(0, 20),
    targetCc: near(40, 80),
    toleranceCc: near(0.05, 5),
    classMinimumCc: fc.option(near(40, 80)),
    screenedCcPerThou: fc.array(near(0.02, 1), { maxLength: 2 }),
    halfFirstPass: fc.boolean(),
    question: fc.constant(null),
    unread: fc.boolean(),
  })
  holds(adviseAtMill, [mill], 600)
  holds(ownRate, [mill], 300)
  holds(readsAtBench, [
    fc.record({ chambers: fc.nat(24), readingCc: plain(0, 20), divisionCc: plain(0, 10), toleranceCc: plain(0, 50) }),
  ])
  holdsFor('readsAtMill', [mill], (input) => readsAtMill(input, adviseAtMill(input)), 200)
  holds(cutSoFarThou, [fc.record({ cuts, plan, centroidShare: share }), plain(0, 500)])
  holds(stateAtMill, [fc.record({ cuts, plan, centroidShare: share, rate, depthErrorThou: plain(0, 20) })], 1500)
})

describe('the cut of a step', () => {
  const at = step as unknown as Arbitrary<Parameters<typeof cutMeasuredAt>[1]>
  const wanted = fc.record({
    orders,
    plan: fc.option(fc.record({ flatIn: plain(0, 0.5), angleIn: plain(0, 0.5) })),
    kind: fc.constantFrom('clean-up', 'flat', 'angle'),
    milledWidthIn: maybe(near(1, 20)),
  }) as unknown as Arbitrary<WantedFacts>
  const against: Arbitrary<CutAgainst> = fc.record({
    wanted,
    deepEdge: fc.constantFrom('intake' as const, 'exhaust' as const),
    marks: fc.constantFrom(null, marksFound(['20 + 63']).read),
    toleranceIn: plain(0, 0.1),
  })
  holds(cutDegrees, [maybe(near(0, 0.5)), maybe(near(1, 20))])
  holds(cutMeasuredAt, [cuts, at], 1000)
  holds(cutWantedAt, [wanted, at])
  holds(marksFound, [fc.array(fc.constantFrom('', 'none', '20 + 63', 'twenty', '1°', ' .020/.063 '))])
  holds(checkCutAt, [cuts, at, against], 1000)
})
