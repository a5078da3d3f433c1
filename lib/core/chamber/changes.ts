import { causedBy, makesDoAgain } from '../route/do-again'
import { confirmedCut } from '../route/outside-cuts'
import type { StepId } from '../route/step-ids'
import { stepLabel } from '../route/table'
import type { OrderFacts, RouteFacts, VisitEvent } from '../route/types'

type Reading = RouteFacts['readings'][number]
export type Figure = Reading & { readonly value: number }

/** What says that a chamber was changed. */
export type ChangeFacts = {
  /** Every reading that stands, repeats too, oldest first. */
  readonly readings: readonly Reading[]
  readonly events: readonly VisitEvent[]
  readonly orders: readonly OrderFacts[]
}

/** The readings of one kind at one step. */
export const readAtStep = ({ readings }: ChangeFacts, stepId: StepId, kind: Reading['kind']): readonly Reading[] =>
  readings.filter((reading) => reading.step.stepId === stepId && reading.kind === kind)

/** Those of the readings that have a value. */
export const figures = (readings: readonly Reading[]): readonly Figure[] =>
  readings.filter((reading): reading is Figure => reading.value !== null)

/** A tick that was taken back did nothing. */
export function ticksOf(events: readonly VisitEvent[], stepId: StepId): readonly number[] {
  const own = events.filter((event) => event.step?.stepId === stepId)
  const lastUndo = own.findLast((event) => event.kind === 'undo')?.seq ?? 0
  return own.filter((event) => event.kind === 'tick' && event.seq > lastUndo).map((event) => event.seq)
}

export type Received = OrderFacts & { readonly receivedSeq: number }

/** Orders that came back with a deck cut, oldest first. */
export const vendorCuts = ({ orders }: Pick<ChangeFacts, 'orders'>): readonly Received[] =>
  orders
    .filter((order): order is Received => order.receivedSeq !== null && confirmedCut(order))
    .sort((a, b) => a.receivedSeq - b.receivedSeq)

/** When the deck was cut, oldest first: when its depth was read, or else ticked, and when a vendor's came back. */
export function cutsMade(facts: ChangeFacts): readonly number[] {
  const here = (['angle-cut', 'flat-cut'] as const).flatMap((stepId) => {
    const read = figures(readAtStep(facts, stepId, stepId === 'flat-cut' ? 'cut-depth' : 'edge-depth'))
    return read.length > 0 ? read.map((reading) => reading.seq) : ticksOf(facts.events, stepId)
  })
  return [...here, ...vendorCuts(facts).map((order) => order.receivedSeq)].sort((a, b) => a - b)
}

/** Work on a chamber; `stepId` null: a valve was changed. */
export type ChamberWork = { readonly stepId: StepId | null; readonly seq: number; readonly words: string }

/** Work after which the finished cc must be read again, but for the cut itself: it changes what a chamber holds. */
const chamberSteps: readonly StepId[] = Object.entries(causedBy)
  .filter(([cause]) => cause !== 'deck-cut' && cause !== 'angle-cut')
  .filter(([cause]) => makesDoAgain[cause as keyof typeof causedBy].includes('finished'))
  .flatMap(([, steps]) => steps as readonly StepId[])

/** Work that changed what a chamber holds otherwise than a cut does. */
export function chamberWorks(facts: ChangeFacts): readonly ChamberWork[] {
  const steps = chamberSteps.flatMap((stepId) => {
    const read = facts.readings.filter((reading) => reading.step.stepId === stepId)
    const outside = facts.orders.filter((order) => order.confirmed.includes(stepId))
    const seqs = [
      ...ticksOf(facts.events, stepId),
      ...read.map((reading) => reading.seq),
      ...outside.flatMap((order) => order.receivedSeq ?? []),
    ]
    return seqs.map((seq) => ({ stepId, seq, words: stepLabel(stepId).toLowerCase() }))
  })
  const valves = facts.events.filter((event) => event.kind === 'valve-changed')
  return [...steps, ...valves.map(({ seq }) => ({ stepId: null, seq, words: 'a valve was changed' }))]
}

/** After this event a chamber is read under another condition. */
export type ChamberChange = {
  readonly seq: number
  /** The step that did it; its own cc are read after it. Null: a cut, a valve or a plug. */
  readonly stepId: StepId | null
}

/**
 * Everything after which a cc reading is no repeat of one before it: a deck cut, chamber work, other checking valves or
 * another plug at the same step.
 *
 * Example: cc at event 3, a depth from touch-off at event 5, cc at event 5 → a change at 5 lies between.
 * Derived: the numbers of the events.
 */
export function chamberChanges(facts: ChangeFacts): readonly ChamberChange[] {
  return [
    ...cutsMade(facts).map((seq) => ({ seq, stepId: null })),
    ...chamberWorks(facts),
    ...setupChanges(facts).map((seq) => ({ seq, stepId: null })),
  ]
}

/** When other checking valves or another plug were named than before, at one step. */
function setupChanges({ readings }: ChangeFacts): readonly number[] {
  const last = new Map<string, string>()
  return readings.flatMap(({ kind, step, text, seq }) => {
    if ((kind !== 'valves-used' && kind !== 'plug-used') || text === '') return []
    const key = [kind, step.stepId, step.occurrence, step.orderId ?? ''].join('|')
    const before = last.get(key)
    const now = text.trim().toLowerCase()
    last.set(key, now)
    return before !== undefined && before !== now ? [seq] : []
  })
}
