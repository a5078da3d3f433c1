import { awayOn, openOrderOf, routeInDetail, type DetailedStep } from './compute-route'
import type { InTheWay, StepName } from './codes'
import { gapPoints } from './gaps'
import { orderName } from './outside-cuts'
import { sameKey } from './keys'
import { secondCheckNeeded } from './second-check'
import type { OrderFacts, RouteFacts } from './types'
import type { Station, StepKey } from './step-ids'

/** Where something that stands in the way is put right. The pages know the addresses. */
export type Place =
  | { readonly kind: 'step'; readonly step: StepKey; readonly station: Station }
  | { readonly kind: 'order'; readonly orderId: string }
  /** The head's own page: holds, findings, release. */
  | { readonly kind: 'head' }
  | { readonly kind: 'plan' }
  /** What is bought or waited for. */
  | { readonly kind: 'parts' }

export type Fix = { readonly what: InTheWay; readonly place: Place }

/**
 * What stands in the way of ticking a step, each with the place where it is put right, in the order in which `canTick`
 * looks. Empty when nothing does.
 *
 * Example: seat work not done, finished to be ticked → first: seat work, at the seat machine.
 */
export function fixesOf(facts: RouteFacts, key: StepKey): readonly Fix[] {
  const route = routeInDetail(facts)
  const step = route.find((candidate) => sameKey(candidate, key))
  if (!step) return [atHead({ code: 'off-route' })]
  const leaving = step.stepId === 'hand-over' && facts.events.some(({ kind }) => kind === 'return-as-is')
  if (facts.openHolds.length > 0 && !leaving) {
    return facts.openHolds.map(({ reason }) => atHead({ code: 'hold', reason }))
  }
  if (facts.onOrder) return [{ what: { code: 'on-order' }, place: { kind: 'parts' } }]
  const order = orderInTheWay(facts, step)
  if (order) {
    return [{ what: { code: 'order', order: orderName(order) }, place: { kind: 'order', orderId: order.orderId } }]
  }
  if (step.stops.length > 0) return step.stops.map((stop) => atStep(step, { code: 'stop', ...stop }))
  if (secondCheckNeeded(facts, step)) return [atStep(step, { code: 'second-check' })]
  return [
    ...owedHere(step),
    ...step.mustFollow.map((first) => comesFirst(route, first)),
    ...step.parts.map((what): Fix => ({ what: { code: 'parts', what }, place: { kind: 'parts' } })),
    ...planMissing(facts, step),
    ...notReleased(facts, step),
  ]
}

const atHead = (what: InTheWay): Fix => ({ what, place: { kind: 'head' } })

const atStep = ({ stepId, occurrence, orderId, station }: DetailedStep, what: InTheWay): Fix => ({
  what,
  place: { kind: 'step', step: { stepId, occurrence, orderId }, station },
})

function orderInTheWay(facts: RouteFacts, step: DetailedStep): OrderFacts | null {
  const own = facts.orders.find(({ orderId }) => orderId === step.orderId)
  const outstanding = own && own.receivedSeq === null ? own : null
  return awayOn(facts) ?? openOrderOf(facts, step) ?? outstanding
}

const owedHere = (step: DetailedStep): Fix[] =>
  step.owes
    .filter(({ missing }) => missing.length > 0)
    .map(({ kind, missing }) => atStep(step, { code: 'readings', kind, points: gapPoints(kind, missing) }))

function comesFirst(route: readonly DetailedStep[], { step, label }: StepName): Fix {
  const first = route.find((candidate) => sameKey(candidate, step))
  return first ? atStep(first, { code: 'first', label }) : atHead({ code: 'first', label })
}

const planMissing = ({ plan }: RouteFacts, { stepId }: DetailedStep): Fix[] =>
  plan === null && (stepId === 'flat-cut' || stepId === 'angle-cut')
    ? [{ what: { code: 'plan' }, place: { kind: 'plan' } }]
    : []

const notReleased = ({ events }: RouteFacts, { stepId }: DetailedStep): Fix[] =>
  stepId === 'hand-over' && !events.some(({ kind }) => kind === 'release' || kind === 'return-as-is')
    ? [atHead({ code: 'release' })]
    : []
