import { ok, refuse, type Result } from '../errors'
import { awayOn, openOrderOf, routeInDetail, type DetailedStep } from './compute-route'
import { gapPoints, readingGap } from './gaps'
import { orderWords } from './outside-cuts'
import { sameKey } from './keys'
import { tableOf } from './table'
import { capital, listed, lower, readingOwed } from './words'
import type { OrderFacts, RouteFacts } from './types'
import type { StepKey } from './step-ids'

export type MayTick = { readonly warnings: readonly string[] }

/**
 * Whether a step may be ticked now. Refused while the head is held or away, while an answer says stop, while a reading is
 * owed or a step that physics puts first is not done: each in words. An advised order only warns.
 *
 * Example: chambers 1 and 2 of 4 measured → refused, "chamber 3 and chamber 4 have no cc yet".
 */
export function canTick(facts: RouteFacts, key: StepKey): Result<MayTick> {
  const step = routeInDetail(facts).find((candidate) => sameKey(candidate, key))
  if (!step || (step.state === 'not needed' && step.doneSeq === null)) {
    return refuse('wrong-state', 'This step is not on the route of this head.')
  }
  if (step.state === 'done' || step.state === 'not needed') return again(facts, step)
  return whereItIs(facts, step) ?? whatItSays(step) ?? whatIsOwed(facts, step) ?? ok({ warnings: warningsOf(step) })
}

/** Looking once more does no harm and may bring the readings that were owed; a second cut undoes all that followed. */
const again = (facts: RouteFacts, step: DetailedStep): Result<MayTick> =>
  tableOf(facts.settings.rules).isWork(step.ref)
    ? refuse('wrong-state', `${step.label} is already ticked. If it was redone, take the tick back first.`)
    : ok({ warnings: [`${step.label} is already ticked.`] })

type Refused = ReturnType<typeof refuse> | null

/** Why nothing can be done at a head that was bought and has not come. */
export const onOrderWords = 'This head is on order and not here yet. Receive it and tag it first.'

/** Why nothing can be done at a head that a vendor has. */
export const awayWords = (order: OrderFacts): string => `This head is out at ${orderWords(order)}. Receive it first.`

function whereItIs(facts: RouteFacts, step: DetailedStep): Refused {
  const leaving = step.stepId === 'hand-over' && facts.events.some((event) => event.kind === 'return-as-is')
  if (facts.openHolds.length > 0 && !leaving) {
    const reasons = listed(facts.openHolds.map((hold) => hold.reason))
    return refuse('hold', `This head is on hold: ${reasons}. The owner must decide first.`)
  }
  if (facts.onOrder) return refuse('wrong-state', onOrderWords)
  const away = awayOn(facts)
  if (away) return refuse('wrong-state', awayWords(away))
  const order = openOrderOf(facts, step)
  if (order) {
    return refuse(
      'wrong-state',
      `${step.label} is on the order to ${orderWords(order)}. Send the head out, or take this step off the order.`,
    )
  }
  const own = facts.orders.find((candidate) => candidate.orderId === step.orderId)
  return own && own.receivedSeq === null ? refuse('wrong-state', `${capital(orderWords(own))} is not back yet.`) : null
}

function whatItSays(step: DetailedStep): Refused {
  if (step.stops.length === 0) return null
  return refuse('hold', `${capital(listed(step.stops))}. Put the head on hold and get the owner.`)
}

function whatIsOwed(facts: RouteFacts, step: DetailedStep): Refused {
  const readings = step.owes.filter((owed) => owed.missing.length > 0)
  const sentences = [
    ...readings.map((owed) => readingOwed(owed.kind, gapPoints(owed.kind, owed.missing))),
    ...step.mustFollow.map(({ label }) => `${lower(label)} comes first`),
    ...step.parts.map((what) => `${what} not received`),
    ...others(facts, step),
  ]
  if (sentences.length === 0) return null
  const needs = readings.flatMap((owed) =>
    gapPoints(owed.kind, owed.missing).map((point) => readingGap(step, step.since, owed.kind, point)),
  )
  return refuse('owed', `${step.label}: ${sentences.join('; ')}.`, { needs })
}

function others(facts: RouteFacts, step: DetailedStep): string[] {
  const cut = step.stepId === 'flat-cut' || step.stepId === 'angle-cut'
  const left = facts.events.some((event) => event.kind === 'release' || event.kind === 'return-as-is')
  return [
    ...(cut && facts.plan === null ? ['there is no cut plan yet'] : []),
    ...(step.stepId === 'hand-over' && !left ? ['it has not been released'] : []),
  ]
}

const warningsOf = (step: DetailedStep): string[] =>
  step.hadBetterFollow.map(({ label }) => `${capital(lower(label))} usually comes first. It is not done yet.`)
