import { isMillPoint, millPoint, type MillStop } from '../chamber/mill-point'
import { pointsOf } from '../readings/points'
import { readingSpecs } from '../readings/specs'
import type { PointSet, ReadingKind } from '../readings/types'
import type { Context } from './context'
import { confirmedCut } from './outside-cuts'
import { keyText, textOf } from './keys'
import { tableOf } from './table'
import type { OrderFacts } from './types'
import type { StepKey, StockStepId, OwnStepId } from './step-ids'

/** One kind of reading that a step asks for. */
export type Ask = {
  readonly kind: ReadingKind
  readonly points: readonly string[]
  /** Offered, not owed. */
  readonly optional?: true
}

type Asks = (context: Context, key: StepKey) => readonly Ask[]

const ask = (context: Context, kind: ReadingKind, set: PointSet = readingSpecs[kind].points): Ask => ({
  kind,
  points: pointsOf(set, { chambers: context.facts.chambers, valves: context.facts.valves }),
})

const all =
  (...kinds: ReadingKind[]): Asks =>
  (context) =>
    kinds.map((kind) => ask(context, kind))

const offer = (asked: Ask): Ask => ({ ...asked, optional: true })

const answeredAt = ({ facts }: Context, key: StepKey, kind: ReadingKind): string =>
  facts.readings.findLast((reading) => reading.kind === kind && keyText(reading.step) === keyText(key))?.text ?? ''

/** Owed once another answer at the same step calls for it, offered until then: both can be given at one go. */
const followUp = (
  context: Context,
  key: StepKey,
  kind: ReadingKind,
  on: ReadingKind,
  values: readonly string[],
): Ask => {
  const asked = ask(context, kind)
  return values.includes(answeredAt(context, key, on)) ? asked : offer(asked)
}

/** Offered until one valve has it; then every valve owes it, so that no column is ticked half read. */
function onceBegun(context: Context, key: StepKey, kind: ReadingKind): Ask {
  const begun = context.facts.readings.some((one) => one.kind === kind && keyText(one.step) === keyText(key))
  return begun ? ask(context, kind) : offer(ask(context, kind))
}

/** One intake and one exhaust show how a flat cut leaves the seats; an angle cut leaves each chamber otherwise. */
const seatDepth = (context: Context): Ask => ({
  kind: 'seat-depth',
  points: pointsOf('chamber-valves', { chambers: context.column === 'angle' ? context.facts.chambers : 1 }),
})

/** How deep each valve of a flat-deck head lies; a plain head has none of it. */
const recession = ({ facts }: Context): readonly Ask[] =>
  facts.flatDeck ? [{ kind: 'recession', points: facts.flatDeck.valves }] : []

/** Owed where the record has a limit for it: not every engine of this form has an injector there. */
const protrusion = (context: Context): readonly Ask[] => {
  const { flatDeck } = context.facts
  if (!flatDeck) return []
  const asked = ask(context, 'protrusion')
  return [flatDeck.hasInjectors ? asked : offer(asked)]
}

const seatBefore: Asks = (context) =>
  context.facts.flatDeck
    ? [...recession(context), ...protrusion(context), offer(ask(context, 'deck-cc'))]
    : [seatDepth(context)]

const seatAfter: Asks = (context) =>
  context.facts.flatDeck
    ? [...recession(context), ask(context, 'insert-marks'), ask(context, 'leak-test')]
    : [seatDepth(context), ask(context, 'top-cut'), ask(context, 'insert-marks'), ask(context, 'leak-test')]

/** Beside thickness and straightness. The valves were read at the seat check where there was one. */
const finishedFlatDeck = (context: Context): readonly Ask[] =>
  context.facts.flatDeck
    ? [
        ...(context.onRoute('seat-after') ? [] : recession(context)),
        ...protrusion(context),
        offer(ask(context, 'deck-cc')),
      ]
    : []

/** Every chamber where something must be held; one shows how the head stands. */
const everyChamberMatters = ({ facts }: Context): boolean => facts.targetCc !== null || facts.classMinCc !== null

const chambers: Asks = (context) => [
  everyChamberMatters(context) ? ask(context, 'cc') : { kind: 'cc', points: ['1'] },
  ask(context, 'valves-used'),
  ask(context, 'plug-used'),
]

const flatCut: Asks = (context) => {
  const { plan, settings, flatDeck } = context.facts
  const depth = ask(context, 'cut-depth')
  if (flatDeck || context.cutKind === 'clean-up' || !plan) return [depth]
  const sure = plan.rateProven === true && plan.flatIn <= settings.checkCcDeeperThanIn
  return sure ? [depth] : [depth, { kind: 'cc', points: [atMill(context, 'at-stop'), atMill(context, 'at-size')] }]
}

/**
 * Where the chamber is read at the mill: where it was read already; else, with a class minimum, the smallest chamber, which
 * holds it; else the usual one.
 */
function atMill({ facts }: Context, stop: MillStop): string {
  const cc = facts.readings.filter(({ kind, value }) => kind === 'cc' && value !== null)
  const read = cc.findLast(({ step, point }) => step.stepId === 'flat-cut' && isMillPoint(point, stop))
  if (read) return read.point
  const bench = cc.filter(({ step }) => step.stepId === 'chambers')
  if (facts.classMinCc === null || bench.length === 0) return stop
  const smallest = bench.reduce((least, one) => ((one.value ?? 0) < (least.value ?? 0) ? one : least))
  return millPoint(stop, smallest.point)
}

/** An angle cut takes a wedge off the face: read at its deck end and its cover end, at both ends of the head. */
function faceDepth(context: Context, key: StepKey): Ask {
  const asked = followUp(context, key, 'face-depth', 'intake-choice', ['cut-face'])
  if (context.column !== 'angle') return asked
  return { ...asked, points: pointsOf('face-ends', { chambers: context.facts.chambers }) }
}

const cutInScope = (order: OrderFacts): boolean => order.scope.some((id) => id === 'angle-cut' || id === 'flat-cut')

const arrivalFigures: Asks = (context, key) => {
  const order = context.facts.orders.find((candidate) => candidate.orderId === key.orderId)
  if (!order) return []
  const cut = cutInScope(order)
  const bent = cut || order.scope.some((id) => id === 'weld' || id === 'straighten')
  const seats = cut || order.scope.includes('seat-work') || order.scope.includes('open-chamber')
  return [
    ...(cut || order.scope.includes('weld') ? [ask(context, 'thickness')] : []),
    ...(bent ? [ask(context, 'straightness')] : []),
    ...(cut ? [ask(context, 'vendor-marks')] : []),
    ...(seats && order.seatsIn && !context.facts.flatDeck ? [{ kind: 'cc', points: ['1'] } as const] : []),
  ]
}

const finished: Asks = (context, key) => {
  const { facts, column, history } = context
  const deckCut = column !== 'none'
  const cutOutside = facts.orders.some(confirmedCut) && !history.markOf(textOf('flat-cut')).workSeq
  const corners =
    column === 'angle' ||
    (facts.flatDeck && deckCut) ||
    context.cutIn > facts.settings.cornersLimitIn ||
    (deckCut && cutOutside)
  const cc = finishedCc(context)
  const bent = deckCut || context.onRoute('thickness') || context.onRoute('straighten') || context.onRoute('weld')
  return [
    ...finishedFlatDeck(context),
    ...(cc.length > 0
      ? [{ kind: 'cc', points: cc } as const, ask(context, 'valves-used'), ask(context, 'plug-used')]
      : []),
    ...(corners ? [ask(context, 'thickness')] : []),
    ...(bent ? [ask(context, 'straightness')] : []),
    ...(facts.finishAsked
      ? [ask(context, 'finish-how'), followUp(context, key, 'finish', 'finish-how', ['measured', 'comparator'])]
      : []),
    ...(deckCut ? [ask(context, 'cutter-marks')] : []),
  ]
}

/** Where there is a target or a limit, every chamber; else those that were measured before, so that both can be told. */
function finishedCc(context: Context): readonly string[] {
  const everyChamber = pointsOf('chambers', { chambers: context.facts.chambers })
  if (everyChamberMatters(context)) return everyChamber
  const before = context.facts.readings.filter(({ kind, step }) => kind === 'cc' && step.stepId === 'chambers')
  return everyChamber.filter((chamber) => before.some((reading) => reading.point === chamber))
}

const flow: Asks = (context) => [{ kind: 'flow', points: context.liftPoints() }]

const noted: Asks = (context) => [offer(ask(context, 'work-note'))]
const nothing: Asks = () => []

/** What each step owes before it can be ticked. */
const asksTable: Readonly<Record<StockStepId, Asks>> = {
  'check-in': all('condition', 'came-with', 'photo'),
  'wash-in': nothing,
  crack: all('crack'),
  pressure: (context) => [
    ask(context, 'pressure'),
    ...(['pressure-held', 'pressure-heat', 'pressure-minutes'] as const).map((kind) => offer(ask(context, kind))),
  ],
  thickness: all('thickness', 'straightness', 'removed-before'),
  chambers,
  'seat-before': seatBefore,
  flow,
  guides: (context, key) => [onceBegun(context, key, 'guide-clearance'), ...noted(context, key)],
  inserts: (context, key) => [offer(ask(context, 'insert-press')), ...noted(context, key)],
  weld: noted,
  straighten: all('straightness'),
  'steam-holes': noted,
  groove: noted,
  coating: noted,
  port: (context) => [offer(ask(context, 'break-through'))],
  'open-chamber': (context) => [
    ask(context, 'cc'),
    offer(ask(context, 'valves-used')),
    offer(ask(context, 'plug-used')),
    offer(ask(context, 'break-through')),
  ],
  'angle-cut': all('edge-depth'),
  'arrival-count': all('count', 'damage'),
  'arrival-figures': arrivalFigures,
  'flat-cut': flatCut,
  deburr: nothing,
  rinse: nothing,
  intake: (context, key) => [ask(context, 'intake-choice'), faceDepth(context, key)],
  'bolt-seats': all('bolt-squared'),
  'bolt-fit': all('bolt-passes', 'bolt-slotted'),
  'bolt-reach': all('bolt-reach'),
  'dowel-fit': all('dowels'),
  'seat-after': seatAfter,
  'seat-work': (context) => [
    ask(context, 'seat-angles'),
    ask(context, 'seat-width'),
    ask(context, 'runout'),
    offer(ask(context, 'vacuum')),
    offer(ask(context, 'leak-test')),
    ask(context, 'sink'),
    ask(context, 'stem-height'),
    ...(context.facts.flatDeck ? [] : [ask(context, 'seat-edge')]),
  ],
  blend: nothing,
  heights: (context) => [
    ask(context, 'installed-height'),
    offer(ask(context, 'shims')),
    ask(context, 'retainer-to-seal'),
    ask(context, 'coil-bind'),
  ],
  springs: (context) => [
    ask(context, 'seat-pressure'),
    ask(context, 'open-pressure'),
    offer(ask(context, 'shims')),
    offer(ask(context, 'spring-rate')),
  ],
  rocker: all('geometry-note'),
  cam: all('cam-note'),
  'trial-fit': all('trial-fit'),
  finished,
  ptv: (context, key) => [ask(context, 'ptv'), followUp(context, key, 'ptv-clearance', 'ptv', ['measured', 'short'])],
  'wash-out': nothing,
  assemble: nothing,
  leak: all('leak-test'),
  wrap: nothing,
  final: all('inspection'),
  'hand-over': all('taken-by', 'side', 'parts-returned'),
}

export function asksOf(context: Context, key: StepKey): readonly Ask[] {
  if (key.stepId in asksTable) return asksTable[key.stepId as StockStepId](context, key)
  const own = tableOf(context.facts.settings.rules).rowOf(key.stepId as OwnStepId).own
  return (own?.owes ?? []).map((kind) => ask(context, kind))
}
