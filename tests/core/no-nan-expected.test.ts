import fc, { type Arbitrary } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { expectedChamber, isBeforeCut, uAfterCut } from '@/lib/core/expected/chamber'
import { agreed, median, outside, together, within } from '@/lib/core/expected/compare'
import { depthAtCorner, expectedCorner, fourthCorner } from '@/lib/core/expected/corner'
import { cutHere } from '@/lib/core/expected/cut-here'
import { expected } from '@/lib/core/expected/expected'
import { expectedProtrusion, expectedRecession } from '@/lib/core/expected/flat-deck'
import { expectedFlow, fromLiftBelow, lineAt } from '@/lib/core/expected/flow'
import { defaultExpectedLimits, expectedLimitsOf } from '@/lib/core/expected/limits'
import { expectedEdgeDepth, expectedMillDepth } from '@/lib/core/expected/mill-depth'
import { expectedRemovedBefore } from '@/lib/core/expected/removed-before'
import { expectedRunout, expectedStraightness, expectedVacuum } from '@/lib/core/expected/one-sided'
import { questionsOf, type TypedFigure } from '@/lib/core/expected/questions'
import { expectedSeatDepth, seatDepthAfter } from '@/lib/core/expected/seat-depth'
import { likelySlip, movePoint } from '@/lib/core/expected/slips'
import { stopsOf } from '@/lib/core/expected/stops'
import { figureKey, knownKey, type ExpectedFacts, type Figures } from '@/lib/core/expected/types'
import { expectedWanted } from '@/lib/core/expected/wanted'
import { readingKinds, type ReadingKind } from '@/lib/core/readings/types'
import { groupOf } from '@/lib/core/readings/valves'
import { valveKinds } from '@/lib/core/readings/valve-kinds'
import { shimChoice } from '@/lib/core/springs/shim-choice'
import { usableLift } from '@/lib/core/springs/usable-lift'
import { cellLimits } from '@/lib/core/valve-sheet/cell-limits'
import { pastCellLimit } from '@/lib/core/valve-sheet/past-limit'
import { columnOf } from '@/lib/core/valve-sheet/columns'
import { parseSeatAngles, parseShims, shimsText } from '@/lib/core/valve-sheet/lists'
import { columnsInUse, columnState, valveName, valveSheet, type SheetReading } from '@/lib/core/valve-sheet/sheet'
import { springOfValve } from '@/lib/core/valve-sheet/spring'
import { quantities } from '@/lib/core/units/quantities'
import { maybe, near, perhaps, plain, unsound } from './any-figure'
import { holds } from './holds'
import { anyWanted } from './wanted/any-wanted'

const kind: Arbitrary<ReadingKind> = fc.constantFrom(...readingKinds)
const point = fc.constantFrom(
  ...[
    '',
    '1',
    '2',
    '3',
    '4',
    'at-stop',
    'at-size',
    'intake',
    'exhaust',
    '1-intake',
    '2-intake',
    '1-exhaust',
    '1-intake-2',
  ],
  ...['intake-1', 'exhaust-1', 'intake-2', 'exhaust-2', 'across', 'along', 'seat', 'open'],
  ...['intake@0.100', 'intake@0.200', 'intake@0.300', 'exhaust@0.000', 'intake@', 'intake@x'],
)
const figure = fc.oneof(near(0, 0.5), near(1, 5), near(10, 120), near(100, 300))
const figures: Arbitrary<Figures> = fc
  .array(
    fc.tuple(
      fc.tuple(kind, point).map(([of, at]) => figureKey(of, at)),
      figure,
    ),
    { maxLength: 18 },
  )
  .map((all) => Object.fromEntries(all))
const seat = fc.record({
  recordNowIn: maybe(near(-0.25, 0.5)),
  xIn: maybe(near(0, 8)),
  radiusIn: maybe(near(0.3, 2)),
  valveAngleDeg: maybe(near(-30, 30)),
})
const edge = fc.constantFrom('intake' as const, 'exhaust' as const)
const cut = fc.record({ shallowIn: near(0, 0.2), deepIn: near(0, 0.3) })
const rate = fc.record({
  ccPerThou: plain(0.02, 1),
  uCcPerThou: plain(0, 0.1),
  priorCcPerThou: plain(0.02, 1),
  betweenHeadPart: plain(0, 0.25),
})
const limits = fc.constantFrom(
  defaultExpectedLimits,
  Object.fromEntries(Object.keys(defaultExpectedLimits).map((key) => [key, 0])) as typeof defaultExpectedLimits,
)
const facts: Arbitrary<ExpectedFacts> = fc.record({
  stepId: fc.constantFrom(
    'thickness',
    'chambers',
    'flat-cut',
    'angle-cut',
    'seat-before',
    'seat-after',
    'finished',
    'flow',
  ),
  chambers: fc.integer({ min: 1, max: 12 }),
  limits,
  here: figures,
  before: figures,
  mate: figures,
  deepEdge: edge,
  milledWidthIn: maybe(near(1, 20)),
  edgeInsetIn: maybe(near(0, 3)),
  cut: fc.option(cut),
  millDepthIn: near(0, 0.2),
  chamber: fc.record({
    repeatabilityCc: near(0, 1),
    divisionCc: near(0, 1),
    uBeforeCc: fc.constant({ '1': 0.3 }),
    centroidShare: maybe(near(0, 1)),
    rate: fc.option(rate),
    depthErrorThou: near(0, 20),
    nominalLessGoneCc: maybe(near(1, 400)),
    workedSince: fc.boolean(),
  }),
  thickness: fc.record({
    newIn: maybe(near(0.3, 12)),
    goneIn: maybe(near(0, 1)),
    earlier: fc.option(fc.record({ goneIn: near(0, 1), job: fc.constant('26-0001') })),
  }),
  seats: fc.record({ intake: seat, exhaust: seat }),
  seatWorkSince: fc.boolean(),
  mill: fc.record({
    adviceIn: maybe(near(0, 0.5)),
    planFlatIn: maybe(near(0, 0.5)),
    planAngleIn: maybe(near(0, 0.5)),
    leftIn: maybe(near(-0.2, 2)),
    lastTotalIn: maybe(near(0, 0.5)),
    touchedOffAnew: fc.boolean(),
  }),
  straightness: fc.record({ acrossIn: near(0, 0.01), alongIn: near(0, 0.02) }),
  runBefore: figures,
  leakCfm: maybe(near(0, 30)),
  wanted: anyWanted,
  liftIn: fc.record({ intake: maybe(near(0, 2)), exhaust: maybe(near(0, 2)) }),
  shimsIn: fc.array(near(0.001, 0.5), { maxLength: 4 }),
}) as Arbitrary<ExpectedFacts>

describe('expected', () => {
  holds(expected, [kind, point, facts], 3000)
  holds(expectedChamber, [point, facts], 1000)
  holds(isBeforeCut, [facts])
  holds(expectedCorner, [fc.constantFrom('intake-1', 'exhaust-2'), facts], 1000)
  holds(expectedSeatDepth, [fc.constantFrom('1-intake', '2-exhaust'), facts], 1000)
  holds(expectedRecession, [fc.constantFrom('1-intake', '1-intake-2', '2-exhaust'), facts], 1000)
  holds(expectedProtrusion, [point, facts], 1000)
  holds(expectedMillDepth, [facts])
  holds(expectedEdgeDepth, [fc.constantFrom('intake', 'exhaust'), facts])
  holds(expectedFlow, [point, facts], 1000)
  holds(expectedStraightness, [point, facts])
  holds(expectedRunout, [facts])
  holds(expectedVacuum, [facts])
  holds(expectedRemovedBefore, [facts])
  holds(expectedWanted, [kind, point, facts], 1000)
  holds(knownKey, [figures, kind, point])
  holds(groupOf, [point])
  holds(figureKey, [kind, point])
  holds(cutHere, [facts])
  holds(stopsOf, [facts], 1000)
  holds(expectedLimitsOf, [limits])
  holds(seatDepthAfter, [near(-0.25, 0.5), cut, seat, maybe(near(1, 20)), near(-0.1, 0.25)], 1000)
  holds(uAfterCut, [fc.record({ uBeforeCc: plain(0, 5), uReadCc: plain(0, 5) }), rate, plain(0, 500), plain(0, 20)])
  holds(depthAtCorner, [fc.boolean(), fc.record({ shallowIn: plain(0, 0.2), deepIn: plain(0, 0.3) }), facts])
  holds(fourthCorner, [fc.tuple(plain(0.3, 12), plain(0.3, 12)), plain(0.3, 12)])
})

describe('comparing', () => {
  const why = { code: 'plan' } as const
  const end = maybe(plain(-100, 100))
  holds(within, [plain(-100, 100), plain(0, 10), fc.constant(why)])
  holds(together, [fc.array(fc.option(fc.record({ value: end, low: end, high: end, why: fc.constant(why) })))])
  holds(outside, [plain(-100, 100), fc.record({ low: end, high: end })])
  holds(median, [fc.array(plain(-100, 100), { minLength: 1 })])
  holds(agreed, [fc.array(plain(-100, 100)), fc.constant(() => 1.5)])
  const lift = (least: number) => fc.record({ liftIn: plain(least, least + 0.2), cfm: plain(0, 400) })
  it('lineAt', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.3, noNaN: true }), lift(0.4), plain(0, 400), (below, above, cfm) => {
        fc.pre(Math.abs(above.liftIn - below) > 1e-6)
        expect(unsound(lineAt({ liftIn: below, cfm }, above, 0.35))).toBeNull()
      }),
    )
  })
  holds(fromLiftBelow, [lift(0.05), plain(0.1, 1), limits])
})

describe('slips', () => {
  const text = fc.stringMatching(/^\d{0,4}[.,]?\d{0,5}$/)
  holds(movePoint, [text, fc.integer({ min: -4, max: 4 })])
  const typed = fc.record({ text, unit: fc.constantFrom('in', 'thou', 'cc', ''), value: figure })
  const quantity = fc.constantFrom('chamberVolume' as const, 'depth' as const, 'flow' as const)
  holds(
    likelySlip,
    [
      typed,
      quantity,
      fc.constantFrom(
        () => true,
        (value: number) => value > 1,
      ),
      fc.array(typed),
    ],
    1000,
  )
  const asked = fc.record({ kind, point, text, unit: fc.constant('in'), value: figure }) as Arbitrary<TypedFigure>
  holds(questionsOf, [fc.array(asked, { maxLength: 8 }), facts], 1000)
})

describe('springs', () => {
  const { height } = quantities
  holds(usableLift, [
    fc.record({
      retainerToSealIn: perhaps(near(-0.5, 2)),
      installedHeightIn: perhaps(near(height.least, height.most)),
      coilBindIn: perhaps(near(height.least, height.most)),
      liftIn: perhaps(near(0, 2)),
      retainerMarginIn: near(0, 0.5),
      coilBindMarginIn: near(0, 0.5),
    }),
  ])
  holds(shimChoice, [
    fc.record({
      seatLbf: perhaps(near(1, 1000)),
      wantedLbf: perhaps(near(1, 1000)),
      rateLbfPerIn: perhaps(near(20, 3000)),
      installedHeightIn: perhaps(near(height.least, height.most)),
      liftIn: perhaps(near(0, 2)),
      shimsIn: fc.array(near(0.001, 0.5), { maxLength: 4 }),
    }),
  ])
})

describe('the valve sheet', () => {
  const atValve = fc.constantFrom('1-intake', '1-intake-2', '2-exhaust')
  const valveFigures = fc
    .array(
      fc.tuple(
        fc.tuple(fc.constantFrom(...valveKinds), atValve).map(([of, at]) => figureKey(of, at)),
        figure,
      ),
      {
        maxLength: 18,
      },
    )
    .map((all) => Object.fromEntries(all))
  const springFacts = fc.tuple(facts, valveFigures, valveFigures, near(1, 1000)).map(([of, here, before, lbf]) => ({
    ...of,
    here,
    before,
    wanted: { intakeSeatPressureLbf: { value: lbf, text: '', unit: 'lbf', from: 'job' as const } },
  }))
  holds(springOfValve, [atValve, springFacts], 2000)
  const valveKind = fc.constantFrom(...valveKinds)
  holds(cellLimits, [valveKind, atValve, facts], 1000)
  holds(pastCellLimit, [valveKind, atValve, figure, facts], 1000)
  holds(columnOf, [valveKind])
  const counts = fc.record({ intake: fc.integer({ min: 1, max: 3 }), exhaust: fc.integer({ min: 1, max: 3 }) })
  const reading: Arbitrary<SheetReading> = fc.record({
    seq: fc.nat(),
    kind,
    point,
    value: fc.option(figure),
    text: fc.string(),
    notTaken: fc.option(fc.string()),
    filled: fc.boolean(),
  })
  const head = fc.record({ chambers: fc.integer({ min: 1, max: 12 }), valves: counts })
  const sheet = fc.tuple(fc.array(reading), head).map(([readings, of]) => valveSheet(readings, of))
  holds(valveSheet<SheetReading>, [fc.array(reading), head])
  holds(columnsInUse<SheetReading>, [sheet, fc.constant(new Set<never>())])
  holds(columnState<SheetReading>, [sheet.map(({ columns }) => columns[0]!)])
  holds(valveName, [fc.constant({ chamber: 1, port: 'intake' as const, number: 1 }), counts])
  holds(parseShims, [fc.string()])
  holds(parseSeatAngles, [fc.string()])
  holds(shimsText, [fc.array(near(0.001, 0.5))])
})
