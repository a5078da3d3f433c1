import fc, { type Arbitrary } from 'fast-check'
import { describe } from 'vitest'
import { smallestOf } from '@/lib/core/at-mill/state-at-mill'
import { chamberMean, shopRepeatability, uncertaintyOfMeanCc, type BuretteFacts } from '@/lib/core/chamber/burette'
import {
  chamberChanges,
  chamberWorks,
  cutsMade,
  figures,
  readAtStep,
  ticksOf,
  vendorCuts,
  type ChangeFacts,
} from '@/lib/core/chamber/changes'
import { chamberOfPoint, isMillPoint, millPoint } from '@/lib/core/chamber/mill-point'
import { pooledSpreadCc, repeatabilityOf, sumOfTallies, tallyOf, wildRepeat } from '@/lib/core/chamber/repeatability'
import { markedRepeats, repeatSets, standingRepeats } from '@/lib/core/chamber/repeats'
import { scatterCc } from '@/lib/core/rate/learn'
import { smallestKnownTo } from '@/lib/core/rate/next-pass'
import { oneAHead } from '@/lib/core/rate/one-a-head'
import { firstGuessOf, flooredU, type Rate } from '@/lib/core/rate/rate'
import { betweenHeadFact } from '@/lib/core/rate/rate-facts'
import { cornersOnOnePlane } from '@/lib/core/straightness/corner-plane'
import { maybe, near } from './any-figure'
import { holds, holdsFor } from './holds'

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true })

const tally = fc.record({ squaresCc2: within(0, 1e6), degrees: fc.nat(1000) })
const cc = within(1, 400)
const reading = fc.record({
  id: fc.uuid(),
  seq: fc.nat(20),
  kind: fc.constantFrom('cc', 'cut-depth', 'valves-used'),
  point: fc.constantFrom('1', '2', 'at-stop', 'at-stop-2', ''),
  value: maybe(cc),
  text: fc.constantFrom('', 'shop', 'own'),
  repeat: fc.constantFrom(null, 'again'),
  step: fc.record({
    stepId: fc.constantFrom('chambers', 'flat-cut', 'port', 'finished'),
    occurrence: fc.constant(''),
    orderId: fc.constant(null),
  }),
})
const readings = fc.array(reading, { maxLength: 12 })
const facts = fc.record({
  readings,
  events: fc.constant([]),
  orders: fc.constant([]),
}) as unknown as Arbitrary<ChangeFacts>
const changes = fc.array(fc.record({ seq: fc.nat(20), stepId: fc.constantFrom(null, 'port' as const) }))

describe('repeats of a reading', () => {
  const shop = fc.record({ sCc: within(0, 20), degrees: fc.integer({ min: 1, max: 10 }), isDefault: fc.boolean() })
  const burette: Arbitrary<BuretteFacts> = fc.record({
    divisionCc: near(0, 1),
    repeatabilityCc: near(0, 1),
    others: fc.record({ squaresCc2: near(0, 10), degrees: near(0, 50) }),
    own: fc.array(fc.record({ ids: fc.array(fc.constantFrom('a', 'b')), tally }), { maxLength: 3 }),
  })
  holds(tallyOf, [fc.array(cc, { maxLength: 9 })])
  holds(sumOfTallies, [fc.array(tally)])
  holds(repeatabilityOf, [tally, within(0, 20)])
  holds(pooledSpreadCc, [tally, shop])
  holds(wildRepeat, [cc, fc.array(cc, { maxLength: 5 }), within(0, 20)])
  holds(uncertaintyOfMeanCc, [within(0, 20), fc.integer({ min: 1, max: 50 }), within(0, 10)])
  holds(chamberMean, [fc.array(near(1, 400), { maxLength: 5 }), burette, fc.array(fc.constantFrom('a', 'c'))])
  holds(shopRepeatability, [
    fc.record({ divisionCc: within(0, 1), repeatabilityCc: within(0, 1), others: tally }),
    fc.array(fc.constantFrom('a', 'c')),
  ])
  holds(repeatSets, [readings as never, changes])
  holds(standingRepeats, [readings as never, changes])
  holds(markedRepeats, [readings as never])
  holds(chamberChanges, [facts])
  holds(chamberWorks, [facts])
  holds(cutsMade, [facts])
  holdsFor('readAtStep, figures, ticksOf, vendorCuts', [facts], (one) => [
    figures(readAtStep(one, 'chambers', 'cc')),
    ticksOf(one.events, 'flat-cut'),
    vendorCuts(one),
  ])
  holds(chamberOfPoint, [fc.constantFrom('at-stop', 'at-size-12', '3', '')])
  holds(millPoint, [fc.constantFrom('before', 'at-stop', 'at-size'), fc.constantFrom('1', '3')])
  holds(isMillPoint, [fc.constantFrom('at-stop-2', '1'), fc.constantFrom('at-stop', 'at-size')])
})

describe('cuts behind a rate', () => {
  const rate: Arbitrary<Rate> = fc.record({
    ccPerThou: within(0.02, 1),
    uCcPerThou: within(0, 0.1),
    cuts: fc.nat(9),
    prior: fc.constant('outline' as const),
  })
  const cut = fc.record({
    depthThou: within(0.1, 500),
    beforeCc: cc,
    uBeforeCc: within(0, 20),
    afterCc: cc,
    uAfterCc: within(0, 20),
    likeForLike: fc.boolean(),
  })
  holds(scatterCc, [cut, within(0.01, 1), fc.record({ depthErrorThou: within(0, 20), betweenHeadPart: within(0, 1) })])
  holds(smallestKnownTo, [within(-10, 10), rate, within(0, 20)])
  holds(firstGuessOf, [rate])
  holds(flooredU, [within(0, 1), within(0.01, 1)])
  holds(betweenHeadFact, [within(0, 1)])
  holds(oneAHead, [
    fc.array(
      fc.record({
        headId: fc.constantFrom('', 'a', 'b'),
        taught: fc.record({ cut: fc.option(cut), whyNot: fc.constant('') }),
      }),
    ),
  ])
  const known = fc.record({
    cc,
    uCc: within(0, 20),
    covCcPerThou: within(-1, 0),
    chamber: fc.constantFrom('1', '2'),
  })
  holdsFor('smallestOf', [fc.array(known), rate, known], (chambers, own, mean) =>
    smallestOf({ chambers, rate: own, mean }),
  )
  const thickness = maybe(near(0.3, 12))
  holds(cornersOnOnePlane, [
    fc.record({ 'intake-1': thickness, 'exhaust-1': thickness, 'intake-2': thickness, 'exhaust-2': thickness }),
  ])
})
