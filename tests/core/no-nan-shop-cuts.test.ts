import fc, { type Arbitrary } from 'fast-check'
import { describe } from 'vitest'
import type { RateCut } from '@/lib/core/rate/learn'
import { priorRate, type Rate } from '@/lib/core/rate/rate'
import { chambersNow } from '@/lib/core/at-bench/chambers-now'
import { shopCutOf, type CutFacts } from '@/lib/core/rate/shop-cut'
import { recordRate } from '@/lib/core/rate/record-rate'
import { screenCuts, zOfCut } from '@/lib/core/rate/screen'
import { depthAtCentroidIn, isProven, taughtBy, uDepthThou } from '@/lib/core/rate/shop-cuts'
import { must } from '@/lib/core/errors'
import { cornersFit, edgesCut, insetOf } from '@/lib/core/straightness/corners-fit'
import { cornerInsetOf } from '@/lib/core/straightness/corner-inset'
import { leanShiftIn } from '@/lib/core/straightness/lean-shift'
import { cutCheck } from '@/lib/core/straightness/cut-check'
import { marksAgainst } from '@/lib/core/straightness/marks-against'
import { marksInOneWay, readMarks } from '@/lib/core/straightness/vendor-marks'
import { maybe, near, perhaps, unsound } from './any-figure'
import { holds } from './holds'

const cc = near(40, 80)
const depth = near(0, 0.5)
const deck = fc.record({
  deepEdge: fc.constantFrom('intake' as const, 'exhaust' as const),
  milledWidthIn: perhaps(near(1, 20)),
  deckLengthIn: perhaps(near(1, 60)),
  inset: fc.option(fc.record({ edgeIn: near(0, 3), endIn: near(0, 3) })),
})

describe('what the shop’s own cuts teach', () => {
  const known = fc.record({ cc, uCc: near(0, 1) })
  // What `edgesCut` can give: differences of thickness.
  const lost = fc.double({ min: -12, max: 12, noNaN: true })
  const cut = fc.record({
    edges: fc.option(fc.record({ shallowIn: lost, deepIn: lost })),
    depthBy: fc.constantFrom('touch-off' as const, 'corners' as const, 'both' as const),
    before: fc.option(known),
    after: fc.option(known),
    whyNot: fc.constantFrom('', 'seat work between the two cc'),
  })
  const rateCut: Arbitrary<RateCut> = fc.record({
    depthThou: near(0.1, 100),
    beforeCc: cc,
    uBeforeCc: near(0, 1),
    afterCc: cc,
    uAfterCc: near(0, 1),
    likeForLike: fc.boolean(),
  })
  const rate: Arbitrary<Rate> = fc
    .constantFrom({ kind: 'outline', openingAreaIn2: 10.1706 } as const, { kind: 'none' } as const)
    .map((source) => must(priorRate(source)))
  holds(depthAtCentroidIn, [fc.record({ shallowIn: lost, deepIn: lost }), maybe(near(0, 1))])
  holds(taughtBy, [cut, maybe(near(0, 1))])
  const scatter = fc.record({ depthErrorThou: near(0, 2), betweenHeadPart: near(0, 0.2) })
  const judged = fc.array(rateCut, { maxLength: 6 })
  holds(recordRate, [rate, judged, maybe(near(0.1, 500)), scatter])
  holds(screenCuts, [rate, judged, scatter])
  const sound = fc.record({
    depthThou: fc.double({ min: 0.1, max: 500, noNaN: true }),
    beforeCc: fc.double({ min: 1, max: 400, noNaN: true }),
    uBeforeCc: fc.double({ min: 0, max: 20, noNaN: true }),
    afterCc: fc.double({ min: 1, max: 400, noNaN: true }),
    uAfterCc: fc.double({ min: 0, max: 20, noNaN: true }),
    likeForLike: fc.constant(true),
  })
  holds(zOfCut, [sound, rate, fc.constant({ depthErrorThou: 0.5, betweenHeadPart: 0.03 })])
  holds(uDepthThou, [fc.constantFrom('touch-off', 'corners', 'both'), fc.double({ min: 0, max: 20, noNaN: true })])
  holds(isProven, [rate])

  const step = <T extends string>(...ids: readonly T[]) =>
    fc.constantFrom(...ids).map((stepId) => ({ stepId, orderId: null }))
  const reading = fc.record({
    step: step('chambers', 'thickness', 'flat-cut', 'angle-cut', 'finished', 'open-chamber'),
    kind: fc.constantFrom('cc', 'cut-depth', 'edge-depth', 'thickness'),
    point: fc.constantFrom('1', '2', 'at-size', 'intake', 'exhaust', 'intake-1', 'exhaust-1', 'intake-2'),
    value: maybe(fc.oneof(cc, depth, near(4, 5))),
    text: fc.constant(''),
    id: fc.uuid(),
    seq: fc.nat(30),
  })
  const facts = fc.record({
    readings: fc.array(reading, { maxLength: 12 }),
    events: fc.array(
      fc.record({
        seq: fc.nat(30),
        kind: fc.constantFrom('tick', 'undo'),
        step: step('flat-cut', 'angle-cut'),
      }),
      { maxLength: 4 },
    ),
    orders: fc.constant([]),
    deck,
    burette: fc.constant({ divisionCc: 0.2, repeatabilityCc: 0.3 }),
  }) as unknown as Arbitrary<CutFacts>
  holds(shopCutOf, [facts], 1000)
  holds(chambersNow, [facts], 1000)
})

describe('what a cut did', () => {
  const thickness = maybe(near(0.3, 12))
  const corners = fc.record(
    { 'intake-1': thickness, 'exhaust-1': thickness, 'intake-2': thickness, 'exhaust-2': thickness },
    { requiredKeys: [] },
  )
  const parts = fc.record({ flatIn: maybe(depth), angleIn: maybe(depth), angleDeg: maybe(near(0, 5)) })
  holds(cornersFit, [deck, corners, corners], 1000)
  holds(insetOf, [deck])
  holds(leanShiftIn, [perhaps(near(0.3, 12)), perhaps(near(-5, 5)), perhaps(near(-5, 5))])
  const place = fc.option(near(0, 3), { nil: undefined })
  holds(cornerInsetOf, [
    fc.record({ cornerInsetEdgeIn: place, cornerInsetEndIn: place }),
    fc.option(fc.record({ edgeIn: near(0, 3), endIn: near(0, 3) })),
  ])
  holds(edgesCut, [deck, corners, corners])
  const bounded = fc.double({ min: 0, max: 0.5, noNaN: true })
  holds(cutCheck, [
    fc.record({
      measured: fc.record({ flatIn: bounded, angleIn: bounded, angleDeg: bounded, taperIn: bounded }),
      wanted: parts,
      marks: fc.constant(null),
      toleranceIn: near(0, 0.1),
      milledWidthIn: maybe(near(1, 20)),
    }),
  ])
  const marks = fc.oneof(
    fc.string(),
    fc.stringMatching(/^\.?\d{1,3} ?(thou|in|°)? ?(\+|,|\/) ?\.?\d{1,3} ?(thou|in|°)?( ex)?$/),
  )
  const part = maybe(near(0, 0.5))
  holds(marksAgainst, [
    fc.record({ flatIn: part, angleIn: part, deepIn: part }),
    fc.record({ flatIn: bounded, angleIn: bounded }),
    near(0, 0.1),
  ])
  holds(marksInOneWay, [
    fc.record({
      flatIn: fc.option(bounded),
      angleIn: fc.option(bounded),
      angleDeg: fc.option(bounded),
      deepIn: fc.option(bounded),
      edge: fc.constantFrom(null, 'intake' as const, 'exhaust' as const),
    }),
  ])
  holds(readMarks, [marks.filter((text) => unsound(text) === null)])
})
