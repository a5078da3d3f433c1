import { causedBy, causes, makesDoAgain, againAfterAnything, standOnceCut, type Cause } from './do-again'
import { keyText, textOf, type StepRef } from './keys'
import type { OrderFacts, RouteFacts, StepId, StepKey } from './types'

/** What has become of one step so far. Numbers are sequence numbers of events. */
export type Mark = {
  readonly startedSeq: number | null
  readonly doneSeq: number | null
  readonly waived: boolean
  /** The last time the work itself was done, here or by a vendor; a waiver does no work. */
  readonly workSeq: number | null
  readonly byVendor: string
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

const fresh: Mark = { startedSeq: null, doneSeq: null, waived: false, workSeq: null, byVendor: '' }

type Entry = {
  readonly seq: number
  readonly kind: 'start' | 'tick' | 'undo' | 'waive' | 'vendor'
  readonly key: StepKey
  readonly vendor: string
}

export const orderWords = (order: Pick<OrderFacts, 'vendor' | 'number'>): string =>
  `${order.vendor}, order ${order.number}`

const isCut = (stepId: StepId): boolean => stepId === 'angle-cut' || stepId === 'flat-cut'

export const confirmedCut = (order: OrderFacts): boolean =>
  order.receivedSeq !== null && order.confirmed.some(isCut)

/** Replays the events in the order of their numbers; the clock is never asked. */
export function historyOf(facts: RouteFacts): History {
  const marks = new Map<string, Mark>()
  for (const entry of entriesOf(facts)) {
    const text = keyText(entry.key)
    marks.set(text, after(marks.get(text) ?? fresh, entry))
  }
  const markOf = (text: string): Mark => marks.get(text) ?? fresh
  const causeSeqs = causeSeqsOf(facts, (ref) => markOf(textOf(ref)).workSeq)
  const deckCutSeq = causeSeqs.get('deck-cut') ?? null
  const made = (stepId: 'angle-cut' | 'flat-cut', part: 'angleIn' | 'flatIn'): boolean =>
    markOf(textOf(stepId)).workSeq !== null ||
    facts.orders.some((order) => confirmedCut(order) && (order.confirmed.includes(stepId) || order[part] > 0))
  return {
    markOf,
    angleMade: made('angle-cut', 'angleIn'),
    flatMade: made('flat-cut', 'flatIn'),
    deckCutSeq,
    undoneBy: undoer(causeSeqs, deckCutSeq),
  }
}

function entriesOf(facts: RouteFacts): Entry[] {
  const inHouse = facts.events.flatMap((event): Entry[] => {
    const kind = event.kind === 'read' ? 'start' : event.kind
    const counts = kind === 'start' || kind === 'tick' || kind === 'undo' || kind === 'waive'
    return counts && event.step ? [{ seq: event.seq, kind, key: event.step, vendor: '' }] : []
  })
  const byVendors = facts.orders.flatMap((order) => {
    const { receivedSeq } = order
    return receivedSeq === null ? [] : order.confirmed.filter((stepId) => vendorDid(facts, stepId)).map(
      (stepId): Entry => ({ seq: receivedSeq, kind: 'vendor', key: { stepId, occurrence: '', orderId: null }, vendor: orderWords(order) }),
    ) // prettier-ignore
  })
  return [...inHouse, ...byVendors].sort((a, b) => a.seq - b.seq)
}

/** A vendor's flat cut is the step done only when nothing of the flat part is left for us. */
const vendorDid = (facts: RouteFacts, stepId: StepId): boolean =>
  stepId !== 'flat-cut' || flatLeftIn(facts) <= 0

/** Depths below this are not set on any mill: a difference in the last figure is no cut. */
const leastCutIn = 0.00005

/**
 * Flat part of the plan that is not cut outside, in inches: plan f minus the sum of the orders' f_v, 0 when nothing is
 * left. An order that came back without the cut confirmed cut nothing. Example: f 0.020, f_v 0.014 → 0.006.
 */
export function flatLeftIn(facts: RouteFacts): number {
  const outside = facts.orders.reduce((sum, order) => sum + (cutsNothing(facts, order) ? 0 : order.flatIn), 0)
  const left = (facts.plan?.flatIn ?? 0) - outside
  return left > leastCutIn ? left : 0
}

function cutsNothing(facts: RouteFacts, order: OrderFacts): boolean {
  if (order.receivedSeq === null || order.confirmed.some(isCut)) return false
  const checked = { stepId: 'arrival-figures', occurrence: '', orderId: order.orderId } as const
  return facts.events.some(
    (event) => event.kind === 'tick' && event.step && keyText(event.step) === keyText(checked),
  )
}

function after(mark: Mark, { kind, seq, vendor }: Entry): Mark {
  switch (kind) {
    case 'start':
      return { ...mark, startedSeq: seq }
    case 'undo':
      return { ...fresh, startedSeq: mark.startedSeq }
    case 'waive':
      return { ...mark, doneSeq: seq, waived: true }
    default:
      return { ...mark, doneSeq: seq, waived: false, workSeq: seq, byVendor: vendor }
  }
}

function causeSeqsOf(
  facts: RouteFacts,
  workSeqOf: (ref: StepRef) => number | null,
): ReadonlyMap<Cause, number> {
  const outsideCuts = facts.orders.filter(confirmedCut)
  const angled = outsideCuts.filter((order) => order.confirmed.includes('angle-cut') || order.angleIn > 0)
  const received = (orders: readonly OrderFacts[]) => orders.map((order) => order.receivedSeq)
  const seqs = (cause: Cause): (number | null)[] => {
    if (cause === 'valve-changed') return facts.events.filter((event) => event.kind === 'valve-changed').map((event) => event.seq)
    if (cause === 'break-through') return brokenThrough(facts).map((reading) => reading.seq)
    const own = causedBy[cause].map(workSeqOf)
    if (cause === 'deck-cut') return [...own, ...received(outsideCuts)]
    return cause === 'angle-cut' ? [...own, ...received(angled)] : own
  } // prettier-ignore
  const latest = causes.map(
    (cause) => [cause, Math.max(0, ...seqs(cause).filter((seq) => seq !== null))] as const,
  )
  return new Map(latest.filter(([, seq]) => seq > 0))
}

export const brokenThrough = (facts: RouteFacts): RouteFacts['readings'] =>
  facts.readings.filter((reading) => reading.kind === 'break-through' && reading.text === 'broken')

function undoer(causeSeqs: ReadonlyMap<Cause, number>, deckCutSeq: number | null): History['undoneBy'] {
  const latest = new Map<StepRef, { seq: number; cause: Cause }>()
  for (const [cause, seq] of causeSeqs) {
    for (const ref of [...makesDoAgain[cause], ...againAfterAnything]) {
      if (deckCutSeq !== null && standOnceCut.includes(ref)) continue
      if (seq >= (latest.get(ref)?.seq ?? 0)) latest.set(ref, { seq, cause })
    }
  }
  return (ref) => latest.get(ref) ?? null
}
