import { awayOn, openOrderOf, routeInDetail, type DetailedStep } from './compute-route'
import type { Owing, TickRefused, TickWarning } from './codes'
import { gapPoints, readingGap } from './gaps'
import { orderName } from './outside-cuts'
import { sameKey } from './keys'
import { secondCheckNeeded } from './second-check'
import { tableOf } from './table'
import type { RouteFacts } from './types'
import type { StepKey } from './step-ids'

export type MayTick =
  | { readonly ok: true; readonly warnings: readonly TickWarning[] }
  | { readonly ok: false; readonly refused: TickRefused }

/**
 * Whether a step may be ticked now. Refused while the head is held or away, while an answer says stop, while a reading is
 * owed or a step that physics puts first is not done. An advised order only warns.
 *
 * Example: chambers 1 and 2 of 4 measured → owed: the cc of chambers 3 and 4.
 */
export function canTick(facts: RouteFacts, key: StepKey): MayTick {
  const step = routeInDetail(facts).find((candidate) => sameKey(candidate, key))
  if (!step || (step.state === 'not needed' && step.doneSeq === null)) return no({ code: 'off-route' })
  if (step.state === 'done') return again(facts, step)
  if (step.state === 'not needed') {
    // Waived while it was needed, it was never done: a tick says that it was, and owes what is read there.
    const owed = whatIsOwed(facts, step)
    return owed ? no(owed) : again(facts, step)
  }
  const refused = whereItIs(facts, step) ?? whatItSays(step) ?? whoLooks(facts, step) ?? whatIsOwed(facts, step)
  return refused ? no(refused) : { ok: true, warnings: warningsOf(step) }
}

const no = (refused: TickRefused): MayTick => ({ ok: false, refused })

/** Looking once more does no harm and may bring the readings that were owed; a second cut undoes all that followed. */
function again(facts: RouteFacts, { ref, label }: DetailedStep): MayTick {
  const ticked = { code: 'ticked', label } as const
  return tableOf(facts.settings.rules).isWork(ref) ? no(ticked) : { ok: true, warnings: [ticked] }
}

function whereItIs(facts: RouteFacts, step: DetailedStep): TickRefused | null {
  const leaving = step.stepId === 'hand-over' && facts.events.some((event) => event.kind === 'return-as-is')
  if (facts.openHolds.length > 0 && !leaving) {
    return { code: 'hold', reasons: facts.openHolds.map((hold) => hold.reason) }
  }
  if (facts.onOrder) return { code: 'on-order' }
  const away = awayOn(facts)
  if (away) return { code: 'away', order: orderName(away) }
  const order = openOrderOf(facts, step)
  if (order) return { code: 'send-out', label: step.label, order: orderName(order) }
  const own = facts.orders.find((candidate) => candidate.orderId === step.orderId)
  return own && own.receivedSeq === null ? { code: 'not-back', order: orderName(own) } : null
}

const whatItSays = ({ stops }: DetailedStep): TickRefused | null =>
  stops.length === 0 ? null : { code: 'stop', stops }

function whoLooks(facts: RouteFacts, step: DetailedStep): TickRefused | null {
  const need = secondCheckNeeded(facts, step)
  return need && { code: 'second-check', ...need }
}

function whatIsOwed(facts: RouteFacts, step: DetailedStep): TickRefused | null {
  const readings = step.owes
    .filter((owed) => owed.missing.length > 0)
    .map(({ kind, missing }) => ({ kind, points: gapPoints(kind, missing) }))
  const owing = {
    label: step.label,
    readings,
    first: step.mustFollow.map(({ label }) => label),
    parts: step.parts,
    others: others(facts, step),
  }
  const { first, parts } = owing
  if (readings.length + first.length + parts.length + owing.others.length === 0) return null
  const needs = readings.flatMap(({ kind, points }) => points.map((point) => readingGap(step, step.since, kind, point)))
  return { code: 'owed', ...owing, needs }
}

function others(facts: RouteFacts, step: DetailedStep): Owing['others'] {
  const cut = step.stepId === 'flat-cut' || step.stepId === 'angle-cut'
  const left = facts.events.some((event) => event.kind === 'release' || event.kind === 'return-as-is')
  return [
    ...(cut && facts.plan === null ? (['plan'] as const) : []),
    ...(step.stepId === 'hand-over' && !left ? (['release'] as const) : []),
  ]
}

const warningsOf = (step: DetailedStep): TickWarning[] =>
  step.hadBetterFollow.map(({ label }) => ({ code: 'usually-first', label }))
