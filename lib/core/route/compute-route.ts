import { answers, badChoice } from '../readings/answered'
import { readingSpecs } from '../readings/specs'
import type { ReadingFact } from '../readings/types'
import { contextOf, type Context } from './context'
import { causeWords } from './do-again'
import { gapPoints, readingGap } from './gaps'
import { flatLeftIn, orderWords, type Mark } from './history'
import { keyOf, keyText, refOf, type StepRef } from './keys'
import { flowNeed } from './needs'
import { advisedBefore, hardBefore } from './order'
import { asksOf, type Ask } from './owes'
import { failedSeatChecks } from './conditions'
import { rowOf, stepTable } from './steps'
import { cutWords, listed, lower } from './words'
import type { FlowOccurrence, OrderFacts, Owed, RouteFacts, RouteStep, StepKey, StepState } from './types'

/** A step of the route with what the decisions about it need beside what is shown. */
export type DetailedStep = RouteStep & {
  readonly ref: StepRef
  /** Steps that must come first, and steps that had better, neither of them done. */
  readonly mustFollow: readonly string[]
  readonly hadBetterFollow: readonly string[]
  /** Parts that have not come. */
  readonly parts: readonly string[]
  /** Number of the event that last undid this step; 0 for none. Older readings do not count. */
  readonly since: number
  /** The readings that count. */
  readonly counted: readonly ReadingFact[]
  /** Answers that mean: stop. */
  readonly stops: readonly string[]
}

/** Everything about one step but what it waits for. */
type Draft = Omit<DetailedStep, 'waitsFor' | 'advice' | 'mustFollow' | 'hadBetterFollow' | 'parts'>

/**
 * The steps this visit needs, in working order, each with its state, why it is there, what it owes and what it waits for.
 *
 * Decided by the tables of this folder from the facts alone: the same facts give the same route, and nothing is changed in
 * them. Example: a flat cut to size of a new head with a target → check in, thickness, chambers, seat check, flat cut,
 * deburr, seat check after, finished, wash, wrap, inspection, hand over.
 */
export function computeRoute(facts: RouteFacts): RouteStep[] {
  return routeInDetail(facts).map(plain)
}

const plain = (step: DetailedStep): RouteStep => ({
  stepId: step.stepId,
  occurrence: step.occurrence,
  orderId: step.orderId,
  label: step.label,
  station: step.station,
  state: step.state,
  why: step.why,
  reason: step.reason,
  isNew: step.isNew,
  waitsFor: step.waitsFor,
  owes: step.owes,
  outside: step.outside,
  doneSeq: step.doneSeq,
  advice: step.advice,
  byVendor: step.byVendor,
})

/** The order that a vendor has the head on now; null when it is in the shop. */
export const awayOn = (facts: RouteFacts): OrderFacts | null =>
  facts.orders.find((order) => order.sentSeq !== null && order.receivedSeq === null) ?? null

/** The order whose scope this step is in, while it has not come back. */
export const openOrderOf = (facts: RouteFacts, { stepId, orderId }: StepKey): OrderFacts | null =>
  orderId === null
    ? (facts.orders.find((order) => order.receivedSeq === null && order.scope.includes(stepId) && coversAll(facts, stepId)) ?? null)
    : null // prettier-ignore

/** A vendor who cuts only part of the flat leaves the step with us. */
const coversAll = (facts: RouteFacts, stepId: StepKey['stepId']): boolean =>
  stepId !== 'flat-cut' || flatLeftIn(facts) === 0

export function routeInDetail(facts: RouteFacts): DetailedStep[] {
  const now = contextOf(facts, facts.plan)
  const before = facts.previousPlan ? contextOf(facts, facts.previousPlan, now.history) : null
  const readings = byKey(facts.readings)
  const drafts = keysInOrder(facts).flatMap((key) =>
    draft(key, now, before, readings.get(keyText(key)) ?? []),
  )
  return drafts.map((entry) => withWaits(entry, drafts, facts))
}

function byKey(readings: RouteFacts['readings']): ReadonlyMap<string, RouteFacts['readings'][number][]> {
  const map = new Map<string, RouteFacts['readings'][number][]>()
  for (const reading of readings) {
    const text = keyText(reading.step)
    const list = map.get(text)
    if (list) list.push(reading)
    else map.set(text, [reading])
  }
  return map
}

/** Every key the tables know, arrivals of each order after the last step that the order can hold up. */
function keysInOrder({ orders }: RouteFacts): StepKey[] {
  const anchors = orders.map((order) => ({ order, anchor: anchorOf(order) }))
  return stepTable.flatMap(({ ref }) => {
    const own = ref.startsWith('arrival-') ? [] : [keyOf(ref)]
    return [
      ...own,
      ...anchors.filter((entry) => entry.anchor === ref).flatMap(({ order }) => arrivalKeys(order)),
    ]
  })
}

const arrivalKeys = ({ orderId }: OrderFacts): StepKey[] => [
  { stepId: 'arrival-count', occurrence: '', orderId },
  { stepId: 'arrival-figures', occurrence: '', orderId },
]

function anchorOf({ scope }: OrderFacts): StepRef {
  const cut = (['angle-cut', 'flat-cut'] as const).find((stepId) => scope.includes(stepId))
  return cut ?? stepTable.findLast((entry) => scope.includes(entry.stepId))?.ref ?? 'angle-cut'
}

function needOfKey(key: StepKey, context: Context): string {
  if (key.stepId === 'flow') return flowNeed(key.occurrence as FlowOccurrence, context)
  const order = context.facts.orders.find((candidate) => candidate.orderId === key.orderId)
  if (key.orderId !== null) return order ? `${orderWords(order)}, comes back` : ''
  return context.need(key.stepId)
}

function draft(
  key: StepKey,
  now: Context,
  before: Context | null,
  readings: readonly ReadingFact[],
): Draft[] {
  const { facts, history } = now
  const mark = history.markOf(key)
  const why = needOfKey(key, now)
  const whyBefore = before ? needOfKey(key, before) : ''
  const touched = mark.doneSeq !== null || mark.startedSeq !== null
  if (why === '' && whyBefore === '' && !touched) return []
  const undone = undoneBy(key, now)
  const since = undone?.seq ?? 0
  const counted = readings.filter((reading) => reading.seq > since && answers(reading))
  const order = openOrderOf(facts, key)
  const state = stateOf(mark, why, since)
  const ref = refOf(key)
  return [
    {
      ...key,
      ref,
      label: rowOf(ref).label,
      station: order ? 'outside' : rowOf(ref).station,
      state,
      why: why || whyBefore,
      reason: reasonOf(state, why, undone?.words ?? '', now),
      isNew: before !== null && why !== '' && whyBefore === '' && !touched,
      owes:
        order || mark.byVendor ? [] : asksOf(now, key).map((ask) => owed(ask, key, since, counted, facts)),
      outside: order !== null && state !== 'done' && state !== 'not needed',
      doneSeq: mark.doneSeq,
      byVendor: mark.byVendor,
      since,
      counted,
      stops: counted.flatMap((reading) => stopsOf(key, reading)),
    },
  ]
}

/** Later work undoes a step; seat work is also undone by a seat check that fails after it. */
function undoneBy(key: StepKey, { facts, history }: Context): { seq: number; words: string } | null {
  const found = history.undoneBy(key)
  if (key.stepId !== 'seat-work') return found && { seq: found.seq, words: causeWords[found.cause] }
  const done = history.markOf(key).doneSeq ?? 0
  const failed = failedSeatChecks(facts).filter((reading) => reading.seq > done && done > 0)
  return failed.length > 0 ? { seq: Math.max(...failed.map((reading) => reading.seq)), words: 'the seat check after it failed' } : null
} // prettier-ignore

function stateOf(mark: Mark, why: string, since: number): StepState {
  if (why === '') return mark.doneSeq !== null && !mark.waived ? 'done' : 'not needed'
  if (mark.doneSeq !== null && mark.doneSeq < since) return 'do again'
  if (mark.doneSeq !== null) return mark.waived ? 'waived' : 'done'
  return mark.startedSeq !== null && mark.startedSeq > since ? 'started' : 'to do'
}

function reasonOf(state: StepState, why: string, undone: string, { facts, cutKind }: Context): string {
  if (state === 'do again') return undone
  if (why !== '') return ''
  return facts.plan ? `no longer needed: the plan is now ${cutWords[cutKind]}` : 'no longer asked for'
}

/** A check that fails at its own step sends it to more seat work; the last leak test has nothing after it. */
export function stopsOf(key: StepKey, reading: ReadingFact): string[] {
  const bad = badChoice(reading)
  if (bad) return [`${lower(readingSpecs[reading.kind].label)}: ${lower(bad.label)}`]
  return key.stepId === 'leak' && reading.text === 'leaks' ? ['leak test: leaks'] : []
}

function owed(
  ask: Ask,
  key: StepKey,
  since: number,
  counted: readonly ReadingFact[],
  facts: RouteFacts,
): Owed {
  const label = readingSpecs[ask.kind].label
  if (ask.optional) return { kind: ask.kind, label, points: ask.points, missing: [], optional: true }
  const given = counted.filter((reading) => reading.kind === ask.kind).map((reading) => reading.point)
  const instead = ask.orElse !== undefined && counted.some((reading) => reading.kind === ask.orElse)
  const missing = instead ? [] : ask.points.filter((point) => !isGiven(ask, point, given))
  const waived = (point: string) =>
    facts.waivedGaps?.includes(readingGap(key, since, ask.kind, point)) ?? false
  return { kind: ask.kind, label, points: ask.points, missing: missing.filter((point) => !waived(point)) }
}

/** One lift of a port answers for the port: how many are worth flowing is the machinist's choice. */
const isGiven = (ask: Ask, point: string, given: readonly string[]): boolean =>
  ask.kind === 'flow' ? given.some((other) => portOf(other) === portOf(point)) : given.includes(point)

const portOf = (point: string): string => point.split('@')[0] ?? point

const settled = (state: StepState): boolean =>
  state === 'done' || state === 'waived' || state === 'not needed'

function withWaits(entry: Draft, drafts: readonly Draft[], facts: RouteFacts): DetailedStep {
  const open = (refs: readonly StepRef[]): string[] =>
    drafts.filter((other) => refs.includes(other.ref) && !settled(other.state)).map((other) => other.label)
  const checkIn: StepRef[] = entry.ref === 'check-in' ? [] : ['check-in']
  const mustFollow = [...new Set(open([...checkIn, ...(hardBefore[entry.ref] ?? [])]))]
  const hadBetterFollow = open(advisedBefore[entry.ref] ?? []).filter((label) => !mustFollow.includes(label))
  const parts = facts.partsWaits
    .filter((wait) => wait.open && keyText(wait.step) === keyText(entry))
    .map((wait) => wait.what)
  const waitsFor = settled(entry.state)
    ? []
    : [
        ...mustFollow,
        ...hadBetterFollow,
        ...parts,
        ...(entry.state === 'not needed' ? [] : circumstances(entry, facts)),
      ]
  const ready = entry.state === 'to do' && waitsFor.length === 0
  return {
    ...entry,
    state: ready ? 'ready' : entry.state,
    waitsFor,
    advice: hadBetterFollow.length > 0 && !settled(entry.state) ? `better after ${listed(hadBetterFollow.map(lower))}` : '',
    mustFollow,
    hadBetterFollow,
    parts,
  } // prettier-ignore
}

/** What is not a step and still stands in the way. */
function circumstances(entry: Draft, facts: RouteFacts): string[] {
  const away = awayOn(facts)
  const order = facts.orders.find((candidate) => candidate.orderId === entry.orderId)
  const happened = (kind: 'release' | 'return-as-is') => facts.events.some((event) => event.kind === kind)
  return [
    ...(facts.openHolds.length > 0 ? ['the owner’s decision on the hold'] : []),
    ...(away ? [orderWords(away)] : []),
    ...(order && order.sentSeq === null ? [`sending out ${orderWords(order)}`] : []),
    ...((entry.stepId === 'flat-cut' || entry.stepId === 'angle-cut') && facts.plan === null
      ? ['the cut plan']
      : []),
    ...(entry.stepId === 'hand-over' && !happened('release') && !happened('return-as-is') ? ['release'] : []),
  ]
}
