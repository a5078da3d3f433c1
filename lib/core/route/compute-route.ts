import { answers, badChoice } from '../readings/answered'
import { readingSpecs } from '../readings/specs'
import type { ReadingFact } from '../readings/types'
import { placesOf } from '../readings/valves'
import type { Context } from './context'
import { contextOf } from './context-of'
import type { Reason, StepWait, Stop, Wait, Why } from './codes'
import { placeOf, readingGap } from './gaps'
import { flatLeftIn, orderName } from './outside-cuts'
import type { Mark } from './marks'
import { keyOf, keyText, sameKey, textOf, type StepRef } from './keys'
import { flowNeed } from './needs'
import { lostByCutting } from './order'
import { rinseNow, type RinseNow } from './rinse'
import { asksOf, type Ask } from './owes'
import { failedSeatChecks } from './conditions'
import { tableOf, type ShopRow, type StepTable } from './table'
import type { OrderFacts, Owed, RouteFacts, RouteStep, StepState } from './types'
import type { FlowOccurrence, StepKey } from './step-ids'

/** A step of the route with what the decisions about it need beside what is shown. */
export type DetailedStep = RouteStep & {
  readonly ref: StepRef
  /** Steps that must come first, and steps that had better, neither of them done. */
  readonly mustFollow: readonly StepWait[]
  readonly hadBetterFollow: readonly StepWait[]
  /** Parts that have not come. */
  readonly parts: readonly string[]
  /** False for what is only shown because it was done, or was needed under the plan before. */
  readonly needed: boolean
  /** Number of the event that last undid this step; 0 for none. Older readings do not count. */
  readonly since: number
  /** The readings that count. */
  readonly counted: readonly ReadingFact[]
  /** Answers that mean: stop. */
  readonly stops: readonly Stop[]
}

/** A step in the making: what it waits for is known once all steps are there. */
type Draft = { -readonly [Part in keyof DetailedStep]: DetailedStep[Part] }

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
  byVendor: step.byVendor,
})

/** The order that a vendor has the head on now; null when it is in the shop. */
export const awayOn = (facts: RouteFacts): OrderFacts | null =>
  facts.orders.find((order) => order.sentSeq !== null && order.receivedSeq === null) ?? null

/** The order whose scope this step is in, while it has not come back. */
export const openOrderOf = (facts: RouteFacts, { stepId, orderId }: StepKey): OrderFacts | null =>
  orderId === null
    ? (facts.orders.find(
        (order) => order.receivedSeq === null && order.scope.includes(stepId) && coversAll(facts, stepId),
      ) ?? null)
    : null

/** A vendor who cuts only part of the flat leaves the step with us. */
const coversAll = (facts: RouteFacts, stepId: StepKey['stepId']): boolean =>
  stepId !== 'flat-cut' || flatLeftIn(facts) === 0

/** Facts do not change, so a route worked out holds for them: completeness asks right after for the one on the screen. */
let last: { readonly facts: RouteFacts; readonly route: readonly DetailedStep[] } | null = null

export function routeInDetail(facts: RouteFacts): readonly DetailedStep[] {
  if (last?.facts !== facts) last = { facts, route: workOut(facts) }
  return last.route
}

function workOut(facts: RouteFacts): readonly DetailedStep[] {
  const now = contextOf(facts, facts.plan)
  const before = facts.previousPlan ? contextOf(facts, facts.previousPlan, now.history) : null
  const readings = byKey(facts.readings)
  const drafts: Draft[] = []
  const table = tableOf(facts.settings.rules)
  for (const slot of slotsOf(table, facts.orders)) {
    const found = draft(slot, now, before, readings.get(slot.text) ?? [])
    if (found) drafts.push(found)
  }
  const rinse = rinseOf(drafts, table, now)
  const steps = rinse.state === 'gone' ? drafts.filter(({ ref }) => ref !== 'rinse') : drafts
  const entry = steps.find(({ ref }) => ref === 'rinse')
  if (entry && rinse.state === 'do again') Object.assign(entry, { state: 'do again', reason: { code: 'not-rinsed' } })
  const open = openSteps(steps)
  const unseen = uncheckedOrders(steps)
  for (const each of steps) {
    const more = each === entry ? rinse.after : rinse.before.has(each.ref) ? entry && [waitFor(entry)] : []
    setWaits(each, table, open, facts, unseen, more ?? [])
  }
  return steps
}

/** Where the rinse stands, by what was machined here or by a vendor, and what is still to be measured. */
function rinseOf(drafts: readonly Draft[], table: StepTable, { facts, history }: Context): RinseNow {
  const open = openSteps(drafts.filter(({ ref }) => ref !== 'rinse'))
  const here = table.rows
    .filter(({ ref }) => table.makesDirt(ref))
    .map(({ ref }) => history.markOf(textOf(ref)).workSeq ?? 0)
  const back = facts.orders.map(({ scope, receivedSeq }) =>
    scope.some((stepId) => stepId !== 'flow' && table.makesDirt(stepId)) ? (receivedSeq ?? 0) : 0,
  )
  return rinseNow(
    drafts.map((entry) => ({
      ref: entry.ref,
      wait: waitFor(entry),
      state: entry.state,
      needed: entry.needed,
      owes: entry.owes,
      isMachining: table.makesDirt(entry.ref),
      waits: () => stillOpen(table.hardBefore.get(entry.ref), open),
    })),
    {
      machinedSeq: Math.max(0, ...here, ...back),
      rinsedSeq: history.markOf(textOf('rinse')).doneSeq ?? 0,
      washedOutSeq: history.markOf(textOf('wash-out')).doneSeq ?? 0,
    },
  )
}

/** Orders whose arrival has not been checked yet, with the check that is still open. */
function uncheckedOrders(drafts: readonly Draft[]): ReadonlyMap<string, StepWait> {
  const last = drafts.filter((entry) => entry.stepId === 'arrival-figures' && !settled(entry.state))
  return new Map(last.map((entry) => [entry.orderId ?? '', waitFor(entry)]))
}

/** Until the arrival check says what a vendor did, nobody here does it over. */
const waitFor = ({ stepId, occurrence, orderId, label }: Draft): StepWait => ({
  code: 'step',
  step: { stepId, occurrence, orderId },
  label,
})

function waitsForCheck(
  { stepId, orderId }: StepKey,
  facts: RouteFacts,
  unseen: ReadonlyMap<string, StepWait>,
): StepWait[] {
  if (orderId !== null || stepId === 'check-in') return []
  return facts.orders.flatMap((order) => {
    const check = unseen.get(order.orderId)
    const open = order.receivedSeq !== null && !order.rejected && order.scope.includes(stepId)
    return open && check !== undefined && !order.confirmed.includes(stepId) ? [check] : []
  })
}

function byKey(readings: RouteFacts['readings']): ReadonlyMap<string, ReadingFact[]> {
  const map = new Map<string, ReadingFact[]>()
  for (const reading of readings) {
    const text = keyText(reading.step)
    const list = map.get(text)
    if (list) list.push(reading)
    else map.set(text, [reading])
  }
  return map
}

/** A place in the table, or an arrival of one order. */
type Slot = { readonly key: StepKey; readonly text: string; readonly row: ShopRow }

const slotOf = (table: StepTable, ref: StepRef, key: StepKey = keyOf(ref)): Slot => ({
  key,
  text: keyText(key),
  row: table.rowOf(ref),
})
const arrivals = ['arrival-count', 'arrival-figures'] as const
const slots = new WeakMap<StepTable, readonly Slot[]>()

function tableSlots(table: StepTable): readonly Slot[] {
  const known =
    slots.get(table) ??
    table.rows
      .filter(({ stepId }) => !arrivals.some((arrival) => arrival === stepId))
      .map(({ ref }) => slotOf(table, ref))
  slots.set(table, known)
  return known
}

/** Every place the tables know, arrivals of each order after the last step that the order can hold up. */
function slotsOf(table: StepTable, orders: readonly OrderFacts[]): readonly Slot[] {
  if (orders.length === 0) return tableSlots(table)
  const anchored = orders.map((order) => ({ order, anchor: anchorOf(table, order) }))
  return tableSlots(table).flatMap((slot) => [
    slot,
    ...anchored.filter(({ anchor }) => anchor === slot.row.ref).flatMap(({ order }) => arrivalSlots(table, order)),
  ])
}

const arrivalSlots = (table: StepTable, { orderId }: OrderFacts): Slot[] =>
  arrivals.map((stepId) => slotOf(table, stepId, { stepId, occurrence: '', orderId }))

function anchorOf({ rows }: StepTable, { scope }: OrderFacts): StepRef {
  const cut = (['angle-cut', 'flat-cut'] as const).find((stepId) => scope.includes(stepId))
  return cut ?? rows.findLast((entry) => scope.includes(entry.stepId))?.ref ?? 'angle-cut'
}

function needOfKey(key: StepKey, context: Context): Why | null {
  if (key.stepId === 'flow') return flowNeed(key.occurrence as FlowOccurrence, context)
  if (key.orderId === null) return context.need(key.stepId)
  const order = context.facts.orders.find((candidate) => candidate.orderId === key.orderId)
  if (!order || isRedone(context.facts, order)) return null
  return { code: 'comes-back', order: orderName(order) }
}

/** What was rejected and is with a vendor again is checked when that comes back. */
function isRedone({ orders }: RouteFacts, { rejected, scope }: OrderFacts): boolean {
  if (!rejected) return false
  return orders.some(
    (order) => (order.sentSeq ?? 0) > rejected.seq && scope.every((stepId) => order.scope.includes(stepId)),
  )
}

function draft(slot: Slot, now: Context, before: Context | null, readings: readonly ReadingFact[]): Draft | null {
  const { key, row } = slot
  const { facts, history } = now
  const mark = history.markOf(slot.text)
  const why = needOfKey(key, now)
  const whyBefore = before ? needOfKey(key, before) : null
  const touched = mark.doneSeq !== null || mark.startedSeq !== null
  if (why === null && whyBefore === null && !touched) return null
  const undone = undoneBy(row.ref, mark, now)
  const since = undone?.seq ?? 0
  const counted = readings.filter((reading) => reading.seq > since && answers(reading))
  const order = openOrderOf(facts, key)
  const owes = order || mark.byVendor ? [] : asksOf(now, key).map((ask) => owed(ask, key, since, counted, facts))
  const reopened = asksForMore(row.ref, owes, now) && why !== null
  const ticked = why !== null && mark.notTaken !== null ? 'do again' : stateOf(mark, why, since)
  const state = ticked === 'done' && reopened ? 'do again' : ticked
  return {
    stepId: key.stepId,
    occurrence: key.occurrence,
    orderId: key.orderId,
    ref: row.ref,
    label: row.label,
    station: order ? 'outside' : row.station,
    state,
    why: why ?? whyBefore,
    reason: reasonOf(
      state,
      why,
      ticked === 'done' ? { code: 'more-readings' } : (mark.notTaken ?? undone?.reason ?? null),
      now,
    ),
    isNew: before !== null && why !== null && whyBefore === null && !touched,
    owes,
    outside: order !== null && state !== 'done' && state !== 'not needed',
    doneSeq: mark.doneSeq,
    byVendor: mark.byVendor,
    waitsFor: [],
    mustFollow: [],
    hadBetterFollow: [],
    parts: [],
    needed: why !== null,
    since,
    counted,
    stops: counted.flatMap((reading) => stopsOf(key, reading)),
  }
}

/**
 * Whether a step that was ticked must be opened again because it now owes readings it had not: the plan asks for more, or
 * one was withdrawn. Work is not done again for a figure, and what the cut has destroyed can no longer be read.
 */
function asksForMore(ref: StepRef, owes: readonly Owed[], { facts, history: { deckCutSeq } }: Context): boolean {
  if (tableOf(facts.settings.rules).isWork(ref) || (deckCutSeq !== null && lostByCutting.includes(ref))) return false
  return owes.some((entry) => entry.missing.length > 0)
}

/** Later work undoes a step; seat work is also undone by a seat check that fails after it. */
function undoneBy(ref: StepRef, mark: Mark, { facts, history }: Context): { seq: number; reason: Reason } | null {
  const found = history.undoneBy(ref)
  const byWork = found && { seq: found.seq, reason: { code: 'undone', cause: found.cause } as const }
  const { doneSeq } = mark
  if (ref !== 'seat-work' || doneSeq === null) return byWork
  const failed = Math.max(0, ...failedSeatChecks(facts).map(({ seq }) => seq))
  return failed > Math.max(doneSeq, found?.seq ?? 0) ? { seq: failed, reason: { code: 'seat-check-failed' } } : byWork
}

function stateOf(mark: Mark, why: Why | null, since: number): StepState {
  if (why === null) return mark.doneSeq !== null && !mark.waived ? 'done' : 'not needed'
  if (mark.doneSeq !== null && mark.doneSeq < since) return 'do again'
  if (mark.doneSeq !== null) return mark.waived ? 'waived' : 'done'
  return mark.startedSeq !== null && mark.startedSeq > since ? 'started' : 'to do'
}

function reasonOf(
  state: StepState,
  why: Why | null,
  undone: Reason | null,
  { facts, cutKind }: Context,
): Reason | null {
  if (state === 'do again') return undone
  if (why !== null) return null
  return facts.plan ? { code: 'plan-now', kind: cutKind } : { code: 'not-asked' }
}

/** A check that fails at its own step sends it to more seat work; the last leak test has nothing after it. */
export function stopsOf(key: StepKey, reading: ReadingFact): Stop[] {
  const stops = badChoice(reading) !== null || (key.stepId === 'leak' && reading.text === 'leaks')
  return stops ? [{ kind: reading.kind, answer: reading.text }] : []
}

function owed(ask: Ask, key: StepKey, since: number, counted: readonly ReadingFact[], facts: RouteFacts): Owed {
  const label = readingSpecs[ask.kind].label
  if (ask.optional) return { kind: ask.kind, label, points: ask.points, missing: [], optional: true }
  const given = new Set<string>()
  for (const { kind, point } of counted) given.add(`${kind}|${placeOf(kind, point)}`)
  const isOwed = (point: string): boolean =>
    !placesOf(ask.kind, placeOf(ask.kind, point)).some(
      (place) =>
        given.has(`${place.kind}|${place.point}`) ||
        facts.waivedGaps?.includes(readingGap(key, since, place.kind, place.point)),
    )
  return { kind: ask.kind, label, points: ask.points, missing: ask.points.filter(isOwed) }
}

const settled = (state: StepState): boolean => state === 'done' || state === 'waived' || state === 'not needed'

/** The steps still open, by their name in the tables. */
type Open = ReadonlyMap<StepRef, readonly StepWait[]>

function openSteps(drafts: readonly Draft[]): Open {
  const open = new Map<StepRef, StepWait[]>()
  for (const entry of drafts) {
    if (settled(entry.state)) continue
    const others = open.get(entry.ref)
    if (others) others.push(waitFor(entry))
    else open.set(entry.ref, [waitFor(entry)])
  }
  return open
}

function setWaits(
  entry: Draft,
  { hardBefore, advisedBefore }: StepTable,
  open: Open,
  facts: RouteFacts,
  unseen: ReadonlyMap<string, StepWait>,
  more: readonly StepWait[],
): void {
  if (settled(entry.state)) return
  const beside = [...more, ...waitsForCheck(entry, facts, unseen)]
  const before = stillOpen(hardBefore.get(entry.ref), open)
  entry.mustFollow = beside.length === 0 ? before : eachOnce([...before, ...beside])
  entry.hadBetterFollow = stillOpen(advisedBefore.get(entry.ref), open)
  entry.parts = facts.partsWaits.filter((wait) => wait.open && sameKey(wait.step, entry)).map((wait) => wait.what)
  entry.waitsFor = [
    ...entry.mustFollow,
    ...entry.hadBetterFollow,
    ...entry.parts.map((what): Wait => ({ code: 'parts', what })),
    ...otherBlockers(entry, facts),
  ]
  if (entry.state === 'to do' && entry.waitsFor.length === 0) entry.state = 'ready'
}

/** The tables name each step once, so nothing is here twice. */
function stillOpen(refs: readonly StepRef[] = [], open: Open): StepWait[] {
  const found: StepWait[] = []
  for (const ref of refs) found.push(...(open.get(ref) ?? []))
  return found
}

const eachOnce = (waits: readonly StepWait[]): StepWait[] => [
  ...new Map(waits.map((wait) => [keyText(wait.step), wait])).values(),
]

/** What is not a step and still stands in the way. */
function otherBlockers(entry: DetailedStep, facts: RouteFacts): Wait[] {
  const away = awayOn(facts)
  const order = facts.orders.find((candidate) => candidate.orderId === entry.orderId)
  const happened = (kind: 'release' | 'return-as-is') => facts.events.some((event) => event.kind === kind)
  const waits: (Wait | null)[] = [
    facts.openHolds.length > 0 ? { code: 'hold' } : null,
    facts.onOrder ? { code: 'arrival' } : null,
    away ? { code: 'away', order: orderName(away) } : null,
    order && order.sentSeq === null ? { code: 'send-out', order: orderName(order) } : null,
    (entry.stepId === 'flat-cut' || entry.stepId === 'angle-cut') && facts.plan === null ? { code: 'plan' } : null,
    entry.stepId === 'hand-over' && !happened('release') && !happened('return-as-is') ? { code: 'release' } : null,
  ]
  return waits.filter((wait) => wait !== null)
}
