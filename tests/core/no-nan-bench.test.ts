import fc, { type Arbitrary } from 'fast-check'
import { describe } from 'vitest'
import { sinkFigures, type SinkInput } from '@/lib/core/at-bench/sink-figures'
import { sinkRoom } from '@/lib/core/at-bench/sink-room'
import { benchFigures, type BenchInput } from '@/lib/core/at-bench/bench-figures'
import { fromOtherEdge } from '@/lib/core/casting/other-edge'
import { cutAsMade } from '@/lib/core/options/cut-as-made'
import { castingFigures, type CastingFacts } from '@/lib/core/casting/figures'
import type { HeadNow } from '@/lib/core/cut/plan-types'
import { engineFigures, type EngineFacts } from '@/lib/core/engine/figures'
import type { MetalGone } from '@/lib/core/head-now/metal-gone'
import { formatAmount, parseAmount } from '@/lib/core/money/amount'
import { jobTotals } from '@/lib/core/money/account'
import { balanceOf } from '@/lib/core/money/balance'
import { creditLeft, creditOf } from '@/lib/core/money/credit'
import { checkPayment, checkVoid } from '@/lib/core/money/payment'
import { checkDiscounts, checkHeld, checkTaxes } from '@/lib/core/money/account-limits'
import { parsePercent, percentOf } from '@/lib/core/money/percent'
import { parseQuantity, quantityText } from '@/lib/core/money/quantity'
import { lineNet, roundMinor, taxOn, totals } from '@/lib/core/money/totals'
import { consequenceLines } from '@/lib/core/options/consequence-lines'
import { consequences } from '@/lib/core/options/consequences'
import { estimateOf } from '@/lib/core/options/estimate'
import type { BenchQuestion, Start } from '@/lib/core/options/bench-types'
import { planRecordOf } from '@/lib/core/options/plan-record-of'
import { planLines } from '@/lib/core/options/plan-words'
import { waysOf } from '@/lib/core/options/ways'
import { stepTable } from '@/lib/core/route/steps'
import { cornerNames } from '@/lib/core/straightness/corners-fit'
import { quantities, type Quantity } from '@/lib/core/units/quantities'
import { benchLine } from '@/lib/words/at-bench'
import { maybe, near } from './any-figure'
import { holdsFor } from './holds'
import { question, start } from './options/bench'

/** Any of a record's figures, some of them not known, some of them absurd. */
function figuresOf<K extends string>(
  figures: Readonly<Record<K, { readonly quantity: string }>>,
): Arbitrary<Partial<Record<K, number>>> {
  const entries = Object.entries<{ readonly quantity: string }>(figures).map(([key, { quantity }]) => {
    const { least, most } = quantities[quantity as Quantity]
    return [key, near(least, most)] as const
  })
  return fc.record(Object.fromEntries(entries), { requiredKeys: [] }) as Arbitrary<Partial<Record<K, number>>>
}

const casting: Arbitrary<CastingFacts> = figuresOf(castingFigures)
const engine: Arbitrary<EngineFacts> = fc
  .tuple(
    figuresOf(engineFigures),
    fc.constantFrom('inline' as const, 'v' as const, 'unknown' as const),
    fc.constantFrom(true, false, null),
  )
  .map(([figures, layout, camInHead]) => ({ ...figures, layout, camInHead }))
const deepEdge = fc.constantFrom('intake' as const, 'exhaust' as const)
const cc = near(40, 80)
const depth = near(0, 0.2)
/** As `metalGone` gives it: looked at already. */
const edgeGone = fc.double({ min: -0.003, max: 1, noNaN: true })
const gone = fc.record({
  atIntakeEdgeIn: edgeGone,
  atExhaustEdgeIn: edgeGone,
  taperIn: fc.double({ min: -0.02, max: 0.02, noNaN: true }),
})
const metalGone: Arbitrary<MetalGone> = fc.record({
  gone,
  by: fc.constantFrom('corners', 'sum', 'new'),
  takenAsFlat: fc.boolean(),
  differs: fc.option(fc.record({ corner: fc.constantFrom(...cornerNames), byCornersIn: edgeGone, bySumIn: edgeGone }), {
    nil: null,
  }),
})
const seatReading = fc.record({
  valve: fc.constantFrom('1-intake', '2-intake', '1-exhaust', '4-exhaust'),
  depthFromDeckNowIn: near(-1.25, 2),
})
const heads: Arbitrary<readonly HeadNow[]> = fc.array(
  fc.record({
    tag: fc.constant('T-0001'),
    chambersCc: fc.array(cc, { maxLength: 4 }),
    thicknessIn: maybe(near(0.3, 12)),
    removedBeforeIn: maybe(near(0, 1)),
    metalGone: fc.oneof(metalGone, fc.constantFrom(null, undefined)),
    edgeThicknessIn: fc.option(fc.record({ intake: maybe(near(0.3, 12)), exhaust: maybe(near(0.3, 12)) }), {
      nil: undefined,
    }),
    chambers: fc.option(fc.integer({ min: 1, max: 12 }), { nil: undefined }),
    seatReadings: fc.option(fc.array(seatReading, { maxLength: 4 }), { nil: undefined }),
  }),
  { maxLength: 2 },
)

/** Half of the time figures that go together, so that the answer is not a refusal every time. */
const sometimes = <T>(usual: T, any: Arbitrary<T>): Arbitrary<T> => fc.oneof(fc.constant(usual), any)
const usual = start()
const anyStart: Arbitrary<Start> = fc
  .record({
    casting: sometimes(usual.casting, casting),
    heads: sometimes(usual.heads, heads),
    deepEdge,
    thouPerCc: near(0.5, 20),
    presentNominal: fc.boolean(),
    used: fc.boolean(),
  })
  .map((more) => ({ ...usual, ...more }))
const anyQuestion: Arbitrary<BenchQuestion> = fc
  .record({
    targetCc: maybe(cc),
    stopAtIn: maybe(near(0.0005, 0.1)),
    sinkIn: near(0, 0.25),
    engine,
    classFlatOnly: fc.boolean(),
    classMinCc: maybe(cc),
    classMaxCutIn: maybe(depth),
    starts: fc.array(anyStart, { minLength: 1, maxLength: 2 }),
  })
  .map((more) => ({ ...question(), ...more }))

describe('what follows from a cut', () => {
  const input = fc.record({
    cut: fc.record({ flatIn: depth, angleIn: depth, milledWidthIn: maybe(near(4, 12)) }),
    casting,
    engine,
    deepEdge,
    beforeCc: maybe(cc),
    finishedCc: maybe(cc),
    sinkIn: near(0, 0.25),
    heads,
  })
  holdsFor('consequences, and their words', [input], (of) => {
    const follows = consequences(of)
    const words = { cut: of.cut, deepEdge: of.deepEdge, follows, ptvLeastIn: { intake: 0.08, exhaust: 0.1 } }
    return [follows, consequenceLines({ ...words, sealingMarginIn: 0.005 })]
  })
})

describe('the figures of a bench', () => {
  const corners = fc.record({
    'intake-1': maybe(near(0.3, 12)),
    'exhaust-1': maybe(near(0.3, 12)),
    'intake-2': maybe(near(0.3, 12)),
    'exhaust-2': maybe(near(0.3, 12)),
  })
  const parts = fc.record({ flatIn: depth, angleIn: depth })
  const width = maybe(near(4, 12))
  // As `boltHoleSlot` gives them.
  const slotIn = fc.double({ min: 0, max: 2, noNaN: true })
  const holes = fc.array(fc.record({ label: fc.string(), slotIn }), { maxLength: 4 })
  const rest = {
    ordered: fc.option(parts),
    deepEdge,
    width,
    before: corners,
    target: maybe(cc),
    inset: maybe(near(0, 1)),
  }
  holdsFor(
    'and their words',
    [parts, casting, engine, holes, fc.record(rest)],
    (cut, record, motor, slots, { ordered, deepEdge: edge, width: milledWidthIn, before, target, inset }) => {
      const input: BenchInput = {
        follows: consequences({
          cut: { ...cut, milledWidthIn },
          casting: record,
          engine: motor,
          deepEdge: edge,
          beforeCc: null,
          finishedCc: null,
          sinkIn: 0,
          heads: [{ tag: 'T-0001', chambersCc: [], thicknessIn: null, removedBeforeIn: 0 }],
        }),
        cut,
        ordered,
        deck: {
          deepEdge: edge,
          milledWidthIn,
          deckLengthIn: 20,
          inset: inset === null ? null : { edgeIn: inset, endIn: inset },
        },
        spotFaceAcrossIn: record.spotFaceIn ?? null,
        holes: slots,
        cornersBefore: before,
        targetCc: target ?? null,
        toleranceCc: 0.5,
        straightIn: { across: 0.002, along: 0.004 },
        finishAsked: '30 µin',
        ptvLeastIn: { intake: 0.08, exhaust: 0.1 },
        circleIn: { intake: record.intakeTopCutIn ?? null, exhaust: null },
      }
      return stepTable.map(({ stepId }) => benchFigures(stepId, input).map((figure) => [figure, benchLine(figure)]))
    },
  )
})

describe('a cut that came out deep at either edge', () => {
  // As a record keeps them: within the limits of entry.
  const record: Arbitrary<CastingFacts> = fc
    .tuple(fc.double({ min: 1, max: 20, noNaN: true }), fc.double({ min: -2, max: 20, noNaN: true }))
    .map(([milledWidthIn, xIn]) => ({ milledWidthIn, intakeValveXIn: xIn, intakeValveAngleDeg: 23 }))
  const edges = fc.record({ shallowIn: depth, deepIn: depth })
  holdsFor('cutAsMade', [edges, deepEdge, record], cutAsMade)
  holdsFor('fromOtherEdge', [record], fromOtherEdge)
})

describe('the sink that a target allows', () => {
  const chambers = fc.array(fc.record({ chamber: fc.constantFrom('1', '2', '3'), cc, isReckoned: fc.boolean() }), {
    maxLength: 4,
  })
  const target = fc.record({ cc, toleranceCc: near(0.05, 10) })
  holdsFor('sinkRoom', [chambers, target, casting], sinkRoom, 1000)
  const input: Arbitrary<SinkInput> = fc.record({
    targetCc: maybe(cc),
    toleranceCc: near(0.05, 10),
    casting,
    chambers,
    // As a plan that was worked out keeps it.
    cutToCome: fc.option(fc.record({ seatWorkGivesCc: fc.double({ min: 0, max: 20, noNaN: true }) })),
  })
  holdsFor('sinkFigures, and their words', [input], (of) =>
    sinkFigures(of).map((figure) => [figure, benchLine(figure)]),
  )
})

describe('a plan’s record', () => {
  const choice = fc.record({
    kind: fc.constantFrom(
      'none' as const,
      'clean-up' as const,
      'flat' as const,
      'angle' as const,
      'angle-flat' as const,
    ),
    splitBy: fc.constantFrom('flat' as const, 'angle' as const, 'degrees' as const, 'margin' as const),
    flatIn: maybe(depth),
    angleIn: maybe(depth),
    angleDeg: maybe(near(0, 5)),
    stopAtIn: maybe(near(0.0005, 0.1)),
    sinkIn: maybe(near(0, 0.25)),
  })
  const limits = {
    angleCautionDeg: 0.5,
    angleLimitDeg: 2,
    thicknessLeastIn: null,
    classFlatOnly: false,
    classMinCc: null,
    classMaxCutIn: null,
  }
  const common = {
    toleranceCc: 0.5,
    rateWords: '',
    marginCc: 1,
    limits,
    ptvLeastIn: { intake: 0.08, exhaust: 0.1 },
  }
  const ground = fc
    .record({
      heads,
      presentNominal: fc.boolean(),
      targetCc: maybe(cc),
      thouPerCc: near(0.5, 20),
      casting: sometimes(usual.casting, casting),
      engine,
      deepEdge,
    })
    .map((more) => ({ ...common, ...more }))
  holdsFor('and its lines', [ground, choice], (on, chosen) => {
    const record = planRecordOf(on, chosen)
    return [record, record.ok ? planLines(record.value, null) : null]
  })
})

describe('the cut bench', () => {
  holdsFor('ways', [anyQuestion], waysOf)
  holdsFor('estimates', [anyQuestion, fc.nat(6), maybe(depth)], (asked, at, angleIn) => {
    const way = waysOf(asked)[at]
    return way ? estimateOf(asked, way.id, angleIn) : null
  })
})

describe('money', () => {
  const minor = fc.integer({ min: -1e9, max: 1e9 })
  const line = fc.record({
    quantityThousandths: fc.integer({ min: 0, max: 1e7 }),
    unitMinor: minor,
    taxMillionths: fc.integer({ min: 0, max: 999_999 }),
  })
  const paid = fc.record({
    kind: fc.constantFrom('deposit' as const, 'payment' as const, 'refund' as const),
    minor,
  })
  holdsFor('totals', [fc.array(line, { maxLength: 6 }), fc.array(paid, { maxLength: 4 })], totals)
  holdsFor('roundMinor', [fc.double({ min: -1e12, max: 1e12, noNaN: true })], roundMinor)
  const manner = fc.record({
    currencyExponent: fc.integer({ min: 0, max: 3 }),
    locale: fc.constantFrom('en-US', 'de-DE', 'fr-FR', 'de-CH', 'en-GB'),
  })
  const typed = fc.oneof(fc.string(), fc.stringMatching(/^\d{0,10}[.,]?\d{0,4}$/))
  holdsFor('parseAmount', [typed, manner], parseAmount)
  holdsFor('parseQuantity', [typed], parseQuantity)
  holdsFor('parsePercent', [typed], parsePercent)
  holdsFor('quantityText', [fc.nat(1e7)], quantityText)
  holdsFor('lineNet', [line], lineNet)
  holdsFor('taxOn', [minor, fc.integer({ min: 0, max: 999_999 })], taxOn)
  const credited = fc.array(fc.record({ line: fc.nat(5), netMinor: minor }), { maxLength: 5 })
  holdsFor('creditOf', [fc.array(line, { maxLength: 5 }), credited, credited], creditOf)
  holdsFor('creditLeft', [fc.array(line, { maxLength: 5 }), credited], creditLeft)
  holdsFor('checkDiscounts', [fc.array(line, { maxLength: 5 }), fc.array(line, { maxLength: 5 })], checkDiscounts)
  holdsFor('checkTaxes', [fc.array(line, { maxLength: 5 }), fc.array(line, { maxLength: 5 })], checkTaxes)
  const sums = { netMinor: minor, taxMinor: minor, totalMinor: minor, paidMinor: minor, dueMinor: minor }
  holdsFor('checkHeld', [fc.record({ ...sums, taxes: fc.constant([]) })], checkHeld)
  holdsFor('balanceOf', [fc.record({ totalMinor: minor, dueMinor: minor })], balanceOf)
  const rate = fc.record({ name: fc.string(), rateMillionths: fc.nat(999_999), netMinor: minor, taxMinor: minor })
  const frozen = fc.record({
    kind: fc.constantFrom('invoice' as const, 'credit-note' as const),
    netMinor: minor,
    taxMinor: minor,
    taxes: fc.array(rate, { maxLength: 3 }),
  })
  const lines = fc.array(line, { maxLength: 6 })
  holdsFor('jobTotals', [lines, fc.array(frozen, { maxLength: 3 }), fc.array(paid, { maxLength: 4 })], jobTotals)
  const standing = fc.record({ totalMinor: minor, paid: fc.array(paid, { maxLength: 4 }) })
  holdsFor('checkPayment', [standing, paid, fc.boolean()], checkPayment)
  holdsFor('checkVoid', [fc.array(paid, { maxLength: 4 })], checkVoid)
  holdsFor('amountText', [fc.nat(1e9), fc.integer({ min: 0, max: 3 })], formatAmount)
  holdsFor('percentOf', [fc.nat(999_999)], percentOf)
})
