import { againAfterAnything, causes, standOnceCut, type Cause } from './do-again'
import { keyText, textOf, type StepRef } from './keys'
import { tableOf, type StepTable } from './table'
import { inchWords } from './words'
import type { OrderFacts, RouteFacts, StepId, StepKey } from './types'

/** What has become of one step so far. Numbers are sequence numbers of events. */
export type Mark = {
  readonly startedSeq: number | null
  readonly doneSeq: number | null
  readonly waived: boolean
  /** When the owner let it pass, whatever was ticked since; a tick that is taken back leaves that standing. */
  readonly waivedSeq: number | null
  /** The last time the work itself was done, here or by a vendor; a waiver does no work. */
  readonly workSeq: number | null
  readonly byVendor: string
  /** Why a vendor's work does not count as done; '' when it does, or none was done. */
  readonly notTaken: string
}

export type History = {
  /** By `keyText`. */
  readonly markOf: (text: string) => Mark
  /** Angle and flat cuts that were really made, here or by a vendor. */
  readonly angleMade: boolean
  readonly flatMade: boolean
  readonly deckCutSeq: number | null
  /** The last thing that undid this step's answers; readings before it no longer count. */
  readonly undoneBy: (ref: StepRef) => { readonly seq: number; readonly cause: Cause } | null
}

const fresh: Mark = {
  startedSeq: null,
  doneSeq: null,
  waived: false,
  waivedSeq: null,
  workSeq: null,
  byVendor: '',
  notTaken: '',
}

type Entry = {
  readonly seq: number
  readonly kind: 'start' | 'tick' | 'undo' | 'waive' | 'vendor' | 'reject'
  readonly key: StepKey
  /** When the work was done: before its number, where a vendor's work was confirmed later. */
  readonly workSeq: number
  readonly vendor: string
  readonly notTaken: string
}

export const orderWords = (order: Pick<OrderFacts, 'vendor' | 'number'>): string =>
  `${order.vendor}, order ${order.number}`

const isCut = (stepId: StepId): boolean => stepId === 'angle-cut' || stepId === 'flat-cut'

export const confirmedCut = (order: OrderFacts): boolean => order.receivedSeq !== null && order.confirmed.some(isCut)

/** Replays the events in the order of their numbers; the clock is never asked. */
export function historyOf(facts: RouteFacts): History {
  const marks = new Map<string, Mark>()
  for (const entry of entriesOf(facts)) {
    const text = keyText(entry.key)
    marks.set(text, after(marks.get(text) ?? fresh, entry))
  }
  const markOf = (text: string): Mark => marks.get(text) ?? fresh
  const table = tableOf(facts.settings.rules)
  const causeSeqs = causeSeqsOf(facts, table, (ref) => markOf(textOf(ref)).workSeq)
  const deckCutSeq = causeSeqs.get('deck-cut') ?? null
  const made = (stepId: 'angle-cut' | 'flat-cut', part: 'angleIn' | 'flatIn'): boolean =>
    markOf(textOf(stepId)).workSeq !== null ||
    facts.orders.some((order) => confirmedCut(order) && (order.confirmed.includes(stepId) || order[part] > 0))
  return {
    markOf,
    angleMade: made('angle-cut', 'angleIn'),
    flatMade: made('flat-cut', 'flatIn'),
    deckCutSeq,
    undoneBy: undoer(table, causeSeqs, deckCutSeq),
  }
}

function entriesOf(facts: RouteFacts): Entry[] {
  const inHouse = facts.events.flatMap((event): Entry[] => {
    const kind = event.kind === 'read' ? 'start' : event.kind
    const counts = kind === 'start' || kind === 'tick' || kind === 'undo' || kind === 'waive'
    return counts && event.step
      ? [{ seq: event.seq, kind, key: event.step, workSeq: event.seq, vendor: '', notTaken: '' }]
      : []
  })
  const byVendors = facts.orders.flatMap((order) => [...confirmedBy(facts, order), ...rejectedOf(order)])
  return [...inHouse, ...byVendors].sort((a, b) => a.seq - b.seq)
}

const keyOfScope = (stepId: StepId): StepKey => ({ stepId, occurrence: '', orderId: null })

function confirmedBy(facts: RouteFacts, order: OrderFacts): Entry[] {
  const { receivedSeq } = order
  if (receivedSeq === null) return []
  const shortIn = angleShortIn(facts)
  return order.confirmed
    .filter((stepId) => vendorDid(facts, stepId))
    .map((stepId) => ({
      seq: order.confirmedSeqs?.[stepId] ?? receivedSeq,
      kind: 'vendor',
      key: keyOfScope(stepId),
      workSeq: receivedSeq,
      vendor: orderWords(order),
      notTaken:
        stepId === 'angle-cut' && shortIn > 0 ? `the angle part is ${inchWords(shortIn)} short by the corners` : '',
    }))
}

/** What was asked for and is not taken is owed again, whether it was confirmed before or not. */
const rejectedOf = (order: OrderFacts): Entry[] =>
  order.rejected
    ? order.scope.map((stepId) => ({
        seq: order.rejected?.seq ?? 0,
        kind: 'reject',
        key: keyOfScope(stepId),
        workSeq: order.receivedSeq ?? 0,
        vendor: orderWords(order),
        notTaken: `rejected: ${order.rejected?.why}`,
      }))
    : []

/** A vendor's flat cut is the step done only when nothing of the flat part is left for us. */
const vendorDid = (facts: RouteFacts, stepId: StepId): boolean => stepId !== 'flat-cut' || flatLeftIn(facts) <= 0

/** Depths below this are not set on any mill: a difference in the last figure is no cut. */
const leastCutIn = 0.00005

/**
 * Flat part of the plan that is not cut outside, in inches: plan f minus the sum of what the orders took, 0 when nothing
 * is left. An order took what it asked for, or what the corners say where they say something else; one that came back
 * without the cut confirmed, or was rejected, took nothing that was not measured.
 * Example: f 0.020, f_v 0.014 → 0.006; the corners say 0.009 where 0.014 was asked for, tolerance 0.002 → 0.011.
 */
export function flatLeftIn(facts: RouteFacts): number {
  const outside = facts.orders.reduce((sum, order) => sum + takenIn(facts, order, 'flatIn'), 0)
  const left = (facts.plan?.flatIn ?? 0) - outside
  return left > leastCutIn ? left : 0
}

/**
 * By how much the angle part that the corners show falls short of what was ordered, in inches; 0: it does not, or nobody
 * has measured. A new plan that wants no more than was cut is not short, nor is a cut that a second order made up for.
 */
export function angleShortIn(facts: RouteFacts): number {
  const cut = facts.orders.filter((order) => order.receivedSeq !== null)
  if (!cut.some((order) => order.measured)) return 0
  const orderedIn = cut.reduce((sum, order) => sum + order.angleIn, 0)
  const takenAllIn = cut.reduce((sum, order) => sum + takenIn(facts, order, 'angleIn'), 0)
  const toleranceIn = Math.max(...cut.map((order) => order.measured?.toleranceIn ?? 0))
  const shortIn = Math.min(facts.plan?.angleIn ?? 0, orderedIn) - takenAllIn
  return shortIn > toleranceIn + rounding ? shortIn : 0
}

/** Angle part of the plan that no order has taken yet, in inches: what the next vendor is asked for. */
export function angleLeftIn(facts: RouteFacts): number {
  const outside = facts.orders.reduce((sum, order) => sum + takenIn(facts, order, 'angleIn'), 0)
  return Math.max(0, (facts.plan?.angleIn ?? 0) - outside)
}

/** Decimals are not exact in binary: 0.022 − 0.020 is within 0.002. */
const rounding = 1e-9

/** Flat or angle part that an order took off this head, or is to take, in inches. */
export function takenIn(facts: RouteFacts, order: OrderFacts, part: 'flatIn' | 'angleIn'): number {
  const { measured } = order
  if (order.receivedSeq !== null && measured) {
    const near = Math.abs(measured[part] - order[part]) <= measured.toleranceIn + rounding
    return near ? order[part] : Math.max(0, measured[part])
  }
  return order.rejected || cutsNothing(facts, order) ? 0 : order[part]
}

function cutsNothing(facts: RouteFacts, order: OrderFacts): boolean {
  if (order.receivedSeq === null || order.confirmed.some(isCut)) return false
  const checked = { stepId: 'arrival-figures', occurrence: '', orderId: order.orderId } as const
  return facts.events.some((event) => event.kind === 'tick' && event.step && keyText(event.step) === keyText(checked))
}

function after(mark: Mark, { kind, seq, workSeq, vendor, notTaken }: Entry): Mark {
  switch (kind) {
    case 'start':
      return { ...mark, startedSeq: seq }
    case 'undo':
      return {
        ...fresh,
        startedSeq: mark.startedSeq,
        doneSeq: mark.waivedSeq,
        waived: mark.waivedSeq !== null,
        waivedSeq: mark.waivedSeq,
      }
    case 'waive':
      return { ...mark, doneSeq: seq, waived: true, waivedSeq: seq, notTaken: '' }
    case 'reject':
      // What was done here since it came back, or by another vendor, stands.
      if (mark.doneSeq !== null && mark.byVendor !== vendor) return mark
      return { ...mark, doneSeq: null, waived: false, byVendor: '', notTaken }
    default:
      // Metal was worked, so what follows from it follows, even where the work itself is still owed.
      if (notTaken !== '') return { ...mark, doneSeq: null, waived: false, workSeq, byVendor: '', notTaken }
      return { ...mark, doneSeq: workSeq, waived: false, workSeq, byVendor: vendor, notTaken: '' }
  }
}

function causeSeqsOf(
  facts: RouteFacts,
  table: StepTable,
  workSeqOf: (ref: StepRef) => number | null,
): ReadonlyMap<Cause, number> {
  const outsideCuts = facts.orders.filter(confirmedCut)
  const angled = outsideCuts.filter((order) => order.confirmed.includes('angle-cut') || order.angleIn > 0)
  const received = (orders: readonly OrderFacts[]) => orders.map((order) => order.receivedSeq)
  const seqs = (cause: Cause): (number | null)[] => {
    if (cause === 'valve-changed')
      return facts.events.filter((event) => event.kind === 'valve-changed').map((event) => event.seq)
    if (cause === 'break-through') return brokenThrough(facts).map((reading) => reading.seq)
    const own = table.causedBy(cause).map(workSeqOf)
    if (cause === 'deck-cut') return [...own, ...received(outsideCuts)]
    return cause === 'angle-cut' ? [...own, ...received(angled)] : own
  }
  const latest = causes.map((cause) => [cause, Math.max(0, ...seqs(cause).filter((seq) => seq !== null))] as const)
  return new Map(latest.filter(([, seq]) => seq > 0))
}

export const brokenThrough = (facts: RouteFacts): RouteFacts['readings'] =>
  facts.readings.filter((reading) => reading.kind === 'break-through' && reading.text === 'broken')

function undoer(
  table: StepTable,
  causeSeqs: ReadonlyMap<Cause, number>,
  deckCutSeq: number | null,
): History['undoneBy'] {
  const latest = new Map<StepRef, { seq: number; cause: Cause }>()
  for (const [cause, seq] of causeSeqs) {
    for (const ref of [...table.makesDoAgain(cause), ...againAfterAnything]) {
      if (deckCutSeq !== null && standOnceCut.includes(ref)) continue
      if (seq >= (latest.get(ref)?.seq ?? 0)) latest.set(ref, { seq, cause })
    }
  }
  return (ref) => latest.get(ref) ?? null
}
