import { ccBeforeCut } from '@/lib/core/at-mill/cc-at'
import { sameKey } from '@/lib/core/route/keys'
import { isDepth } from '@/lib/core/route/second-check'
import { dateWords, type WhenManner } from '@/lib/core/shop/when-words'
import type { StepKey } from '@/lib/core/route/step-ids'
import { stepKeyOf } from '@/lib/data/facts'
import { lower } from '@/lib/core/route/words'
import { stepLabel } from '@/lib/core/route/table'
import { secondCheckDoneText } from '@/lib/words/second-check'
import { cutFactsOf } from './cut-facts'
import type { Dossier } from './dossier'
import { isAt } from './find-step'

type Event = Dossier['visit']['events'][number]

/** The last second check of a step that stands under the newest plan; null: none. */
export function secondCheckOf({ visit }: Dossier, step: StepKey): Event | null {
  const plannedSeq = visit.events.findLast(({ kind }) => kind === 'plan')?.seq ?? 0
  return (
    visit.events.findLast((event) => event.kind === 'second-check' && event.seq > plannedSeq && isAt(event, step)) ??
    null
  )
}

/** Who took the head for a step: whoever read a depth there, else whoever started it; null: nobody yet. */
export function takenBy({ visit, readings }: Dossier, step: StepKey): string | null {
  const depths = readings.filter(({ kind, step: at, value }) => isDepth(kind) && value !== null && sameKey(at, step))
  const cut = visit.readings.findLast((set) => depths.some(({ setId }) => setId === set.id))
  return cut?.byId ?? visit.events.findLast((event) => event.kind === 'start' && isAt(event, step))?.byId ?? null
}

/** What each chamber held before the cut, in cc, by its number: what a second reading is held against. */
export const chambersBefore = (dossier: Dossier) =>
  ccBeforeCut(dossier.readings, cutFactsOf(dossier).burette, dossier.changes).chambers

/** Both names of every second check of a visit, oldest first. */
export function secondCheckLines(dossier: Dossier, nameOf: (personId: string) => string, shop: WhenManner): string[] {
  return dossier.visit.events.flatMap((event) => {
    const { kind, stepId, note, byId, at } = event
    if (kind !== 'second-check' || stepId === null) return []
    const key = stepKeyOf({ ...event, stepId })
    const taker = takenBy(dossier, key)
    return [
      secondCheckDoneText({
        step: lower(stepLabel(key.stepId, dossier.settings.rules)),
        by: nameOf(byId),
        takenBy: taker === null ? '' : nameOf(taker),
        read: note,
        day: dateWords(at, shop),
      }),
    ]
  })
}

/** Whose names those lines need. */
export const peopleOfChecks = (dossier: Dossier): string[] => {
  const checks = dossier.visit.events.filter(({ kind }) => kind === 'second-check')
  return checks.flatMap((event) => {
    const taker = event.stepId === null ? null : takenBy(dossier, stepKeyOf({ ...event, stepId: event.stepId }))
    return taker === null ? [event.byId] : [event.byId, taker]
  })
}
