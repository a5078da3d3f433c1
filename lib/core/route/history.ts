import { angleShortIn, brokenThrough, confirmedCut, flatLeftIn, orderName } from './outside-cuts'
import type { OrderName, Reason } from './codes'
import type { History, Mark } from './marks'
import { againAfterAnything, causes, type Cause } from './do-again'
import { keyText, textOf, type StepRef } from './keys'
import { lostByCutting } from './order'
import { tableOf, type StepTable } from './table'
import type { OrderFacts, RouteFacts } from './types'
import type { StepId, StepKey } from './step-ids'

const fresh: Mark = {
  startedSeq: null,
  doneSeq: null,
  waived: false,
  waivedSeq: null,
  workSeq: null,
  byVendor: null,
  notTaken: null,
}

type Entry = {
  readonly seq: number
  readonly kind: 'start' | 'tick' | 'undo' | 'waive' | 'vendor' | 'reject'
  readonly key: StepKey
  /** When the work was done: before its number, where a vendor's work was confirmed later. */
  readonly workSeq: number
  /** Null: it was done here. */
  readonly vendor: OrderName | null
  readonly notTaken: Reason | null
}

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
      ? [{ seq: event.seq, kind, key: event.step, workSeq: event.seq, vendor: null, notTaken: null }]
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
      vendor: orderName(order),
      notTaken: stepId === 'angle-cut' && shortIn > 0 ? { code: 'angle-short', shortIn } : null,
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
        vendor: orderName(order),
        notTaken: { code: 'rejected', why: order.rejected?.why ?? '' },
      }))
    : []

/** A vendor's flat cut is the step done only when nothing of the flat part is left for us. */
const vendorDid = (facts: RouteFacts, stepId: StepId): boolean => stepId !== 'flat-cut' || flatLeftIn(facts) <= 0

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
      return { ...mark, doneSeq: seq, waived: true, waivedSeq: seq, notTaken: null }
    case 'reject':
      // What was done here since it came back, or by another vendor, stands.
      if (mark.doneSeq !== null && mark.byVendor?.number !== vendor?.number) return mark
      return { ...mark, doneSeq: null, waived: false, byVendor: null, notTaken }
    default:
      // Metal was worked, so what follows from it follows, even where the work itself is still owed.
      if (notTaken !== null) return { ...mark, doneSeq: null, waived: false, workSeq, byVendor: null, notTaken }
      return { ...mark, doneSeq: workSeq, waived: false, workSeq, byVendor: vendor, notTaken: null }
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

function undoer(
  table: StepTable,
  causeSeqs: ReadonlyMap<Cause, number>,
  deckCutSeq: number | null,
): History['undoneBy'] {
  const latest = new Map<StepRef, { seq: number; cause: Cause }>()
  for (const [cause, seq] of causeSeqs) {
    for (const ref of [...table.makesDoAgain(cause), ...againAfterAnything]) {
      // Input of the cut: once the deck is cut it stands for ever, and `finished` is owed instead.
      if (deckCutSeq !== null && lostByCutting.includes(ref)) continue
      if (seq >= (latest.get(ref)?.seq ?? 0)) latest.set(ref, { seq, cause })
    }
  }
  return (ref) => latest.get(ref) ?? null
}
