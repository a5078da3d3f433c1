import { isLess } from './floors'
import type { StepRef } from './keys'
import type { OwnStep, RouteRules, StepChange } from './rules'
import { tableOf } from './table'

/**
 * Steps that other tables ask for less often, or with less before they may be done: such a change needs a reason. By what
 * they are called under the tables before.
 *
 * Example: a crack check that comes "when ordered" in the place of "conditional" → "Crack check".
 */
export function workTakenAway(before: RouteRules, after: RouteRules): readonly string[] {
  const is = tableOf(after)
  return tableOf(before).rows.flatMap((row) => {
    const now = is.rowOf(row.ref)
    const comesLess =
      now === undefined || row.cells.some((cell, place) => isLess(now.cells[place] ?? '–', cell) && !row.own?.retired)
    return comesLess || asksLess(row.ref, before, after) ? [row.label] : []
  })
}

function asksLess(ref: StepRef, before: RouteRules, after: RouteRules): boolean {
  const [was, is] = [askedBy(ref, before), askedBy(ref, after)]
  const ownWas = before.own.find(({ id }) => id === ref)
  const ownIs = after.own.find(({ id }) => id === ref)
  return lost(was.waitsFor, is.waitsFor) || lost(was.undoneBy, is.undoneBy) || ownAsksLess(ownWas, ownIs)
}

const askedBy = (ref: StepRef, { changed, own }: RouteRules): Pick<StepChange, 'waitsFor' | 'undoneBy'> =>
  own.find(({ id }) => id === ref) ?? changed[ref] ?? {}

const lost = <T>(was: readonly T[] = [], is: readonly T[] = []): boolean => was.some((one) => !is.includes(one))

/** Another condition may hold less often, and so may a larger limit. */
function ownAsksLess(was: OwnStep | undefined, is: OwnStep | undefined): boolean {
  if (!was || was.retired || !is) return false
  return (
    is.retired ||
    lost(was.owes, is.owes) ||
    (was.machining && !is.machining) ||
    (was.when !== '' && was.when !== is.when) ||
    (was.limitIn ?? 0) < (is.limitIn ?? 0)
  )
}

/**
 * The tables as they were, made to stand again: steps that the shop added since are kept, no longer used, since heads and
 * prices may name them and an id is never given twice.
 */
export function restored(then: RouteRules, now: RouteRules): RouteRules {
  const since = now.own.filter(({ id }) => !then.own.some((step) => step.id === id))
  return { ...then, own: [...then.own, ...since.map((step) => ({ ...step, retired: true }))] }
}
