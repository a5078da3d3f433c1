import fc, { type Arbitrary } from 'fast-check'
import { describe } from 'vitest'
import { castingFigures, type CastingFacts } from '@/lib/core/casting/figures'
import { acrossShare, goneOfHead, landLeftIn } from '@/lib/core/cut/plan-limits'
import { goneDiffersText } from '@/lib/words/cut-cautions'
import { thicknessLeftIn } from '@/lib/core/cut/plan-volumes'
import { acrossDeckNowIn, deckNow, heightFromDeckNowIn, placeFromDeckNow } from '@/lib/core/head-now/deck-now'
import {
  atDeeperEnd,
  deckNowFromNewDeckIn,
  flatGone,
  goneAtCornerIn,
  goneByCut,
  leastGoneIn,
  mostGoneIn,
  sumOfGone,
  type Gone,
} from '@/lib/core/head-now/gone'
import { slotAfterCuts } from '@/lib/core/head-now/hole-slot'
import { metalGone } from '@/lib/core/head-now/metal-gone'
import { recordFromDeckNow } from '@/lib/core/head-now/record-now'
import { nearestSeat, seatOfValve } from '@/lib/core/head-now/seat-now'
import { nearlyFlatWording } from '@/lib/core/intake/face-cut'
import { givenFacts } from '@/lib/core/known-facts'
import { seatOfRecord } from '@/lib/core/seat/seat-of-record'
import { cornerNames } from '@/lib/core/straightness/corners-fit'
import { quantities } from '@/lib/core/units/quantities'
import { finite, maybe, near, perhaps, plain } from './any-figure'
import { holds } from './holds'

const edge = fc.constantFrom('intake' as const, 'exhaust' as const)
const depth = near(0, 0.5)
const width = near(1, 20)
const plainGone: Arbitrary<Gone> = fc.record({
  atIntakeEdgeIn: plain(0, 1),
  atExhaustEdgeIn: plain(0, 1),
  taperIn: plain(-0.02, 0.02),
})
const gone: Arbitrary<Gone> = fc.record({
  atIntakeEdgeIn: near(0, 0.3),
  atExhaustEdgeIn: near(0, 0.3),
  taperIn: near(-0.02, 0.02),
})
const cut = fc.record({ flatIn: depth, angleIn: depth, deepEdge: edge })
const plainCut = fc.record({ flatIn: plain(0, 0.5), angleIn: plain(0, 0.5), deepEdge: edge })
const corners = fc.record(Object.fromEntries(cornerNames.map((name) => [name, maybe(near(4, 4.6))]))) as Arbitrary<
  Record<(typeof cornerNames)[number], number | null>
>

/** Only decks that `deckNow` gives. */
const deck = fc
  .tuple(gone, edge, width)
  .map(([of, deep, wide]) => deckNow(of, deep, wide))
  .filter((found) => found.ok)
  .map((found) => found.value)
const place = fc.record({ fromShallowEdgeIn: plain(-20, 20), heightFromNewDeckIn: plain(-20, 20) })

const record = fc.record(
  Object.fromEntries(
    Object.entries(castingFigures).map(([key, { quantity }]) => {
      const { least, most } = quantities[quantity]
      return [key, near(least, most)]
    }),
  ),
  { requiredKeys: [] },
) as Arbitrary<CastingFacts>
const readings = fc.array(
  fc.record({
    valve: fc.constantFrom('1-intake', '2-intake', '3-exhaust', '4-exhaust'),
    depthFromDeckNowIn: plain(-1.25, 2),
  }),
  { maxLength: 5 },
)
const port = fc.constantFrom('intake' as const, 'exhaust' as const)
const seatInput = fc.record({ record, port, deck: fc.option(deck, { nil: null }), readings })

describe('metal gone', () => {
  holds(flatGone, [plain(0, 1)])
  holds(goneByCut, [plainCut])
  holds(sumOfGone, [fc.array(plainGone, { maxLength: 4 })])
  holds(deckNowFromNewDeckIn, [plainGone, plain(0, 1)])
  holds(goneAtCornerIn, [plainGone, fc.constantFrom(...cornerNames)])
  holds(mostGoneIn, [plainGone])
  holds(leastGoneIn, [plainGone])
  holds(atDeeperEnd, [plainGone])
  holds(metalGone, [
    fc.record({
      newThicknessIn: maybe(near(4, 4.6)),
      corners,
      deck: fc.record({
        milledWidthIn: perhaps(width),
        deckLengthIn: perhaps(near(4, 40)),
        inset: fc.option(fc.record({ edgeIn: near(0, 1), endIn: near(0, 1) }), { nil: null }),
      }),
      knownCuts: fc.array(cut, { maxLength: 3 }),
      removedBeforeIn: maybe(near(0, 1)),
      isNew: fc.boolean(),
    }),
  ])
})

describe('the deck as it is now', () => {
  holds(deckNow, [gone, edge, perhaps(width)])
  holds(heightFromDeckNowIn, [deck, place])
  holds(placeFromDeckNow, [deck, place])
  holds(acrossDeckNowIn, [deck, plain(-20, 20), plain(-20, 20)])
  // A figure that is not known is left out, not printed.
  const known = (of: CastingFacts, on: Parameters<typeof recordFromDeckNow>[1]) =>
    Object.fromEntries(Object.entries(recordFromDeckNow(of, on)).filter(([, value]) => value !== undefined))
  holds(known, [record, deck])
})

describe('seats', () => {
  holds(seatOfRecord, [record, port])
  holds(seatOfValve, [fc.constantFrom('1-intake', '2-exhaust'), seatInput])
  holds(nearestSeat, [
    fc
      .tuple(seatInput, fc.option(near(1, 12), { nil: undefined }))
      .map(([input, chambers]) => ({ ...input, chambers })),
  ])
})

describe('limits from the head as it is now', () => {
  const head = fc.record({
    tag: fc.constant('T-0001'),
    chambersCc: fc.constant([64]),
    thicknessIn: maybe(fc.double({ min: 0.3, max: 12, noNaN: true })),
    removedBeforeIn: maybe(fc.double({ min: 0, max: 1, noNaN: true })),
  })
  const parts = fc.record({ flatIn: plain(0, 0.5), angleIn: plain(0, 0.5) })
  holds(acrossShare, [plain(0, 1), edge])
  holds(goneOfHead, [head, maybe(fc.double({ min: 0.3, max: 12, noNaN: true }))])
  holds(thicknessLeftIn, [head, parts, edge])
  holds(goneDiffersText, [
    fc.constant('T-0001'),
    fc.record({ corner: fc.constantFrom(...cornerNames), byCornersIn: plain(0, 1), bySumIn: plain(0, 1) }),
  ])
  const land = (newIn: number, atShare: number | null, of: Parameters<typeof goneOfHead>[0], flatIn: number) =>
    landLeftIn(
      {
        kind: 'flat',
        heads: [of],
        targetCc: 60,
        toleranceCc: 0.5,
        seatWorkGivesCc: 0,
        thouPerCc: 6,
        centroidShare: 0.6,
        milledWidthIn: 7,
        split: { by: 'margin' },
        marginCc: 0,
        stopAtIn: null,
        limits: {
          angleCautionDeg: 0.5,
          angleLimitDeg: 1,
          thicknessLeastIn: null,
          land: { newIn, leastIn: 0, atShare },
          classFlatOnly: false,
          classMinCc: null,
          classMaxCutIn: null,
        },
      },
      of,
      { flatIn, angleIn: 0 },
    )
  holds(land, [plain(0, 3), maybe(plain(0, 1)), head, plain(0, 0.5)])
  holds(nearlyFlatWording, [plain(75, 85)])
  holds(givenFacts, [
    fc.dictionary(
      fc.constantFrom('a', 'b'),
      fc.tuple(fc.constant('figure'), maybe(finite), fc.constant(0), fc.constant(1)),
    ) as Arbitrary<Record<string, readonly [string, number | null, number, number]>>,
  ])
})

describe('bolt holes', () => {
  const hole = fc.record({
    lengthNewIn: perhaps(near(0.1, 12)),
    holeDiameterIn: perhaps(near(0.1, 2)),
    boltDiameterIn: perhaps(near(0.1, 2)),
    fromShallowEdgeIn: maybe(near(0, 20)),
  })
  const milled = fc.record({ flatIn: depth, angleIn: depth, milledWidthIn: perhaps(width) })
  holds(slotAfterCuts, [hole, fc.option(gone, { nil: null }), milled, edge])
})
