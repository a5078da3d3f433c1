import { can, readAction } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { secondCheckNeeded } from '@/lib/core/route/second-check'
import type { RouteStep } from '@/lib/core/route/types'
import { namesOf } from '@/lib/data/people'
import type { Dossier } from '@/lib/dossier/dossier'
import { chambersBefore, secondCheckOf, takenBy } from '@/lib/dossier/second-check'
import { secondCheckRefusals, secondCheckText } from '@/lib/words/second-check'

/** What the step's page says of the second check: asked for, with who may do it, or done, with who did it. */
export type SecondCheckAtStep =
  | {
      readonly state: 'needed'
      readonly words: string
      /** Why this person cannot do it; '' when they can. */
      readonly cannot: string
      /** Who took the head; '' while nobody has. */
      readonly takenBy: string
      /** Chambers that were read before, or all of them; none on a flat deck. */
      readonly chambers: readonly string[]
    }
  | { readonly state: 'done'; readonly by: string; readonly read: string; readonly at: string }

export async function secondCheckAtStep(
  dossier: Dossier,
  step: RouteStep,
  actor: Actor,
): Promise<SecondCheckAtStep | null> {
  const need = step.state === 'done' || step.state === 'waived' ? null : secondCheckNeeded(dossier.facts, step)
  if (!need) {
    const done = secondCheckOf(dossier, step)
    const by = done && (await namesOf([done.byId])).get(done.byId)
    return done && { state: 'done', by: by ?? '', read: done.note, at: done.at.toISOString() }
  }
  const taker = takenBy(dossier, step)
  const read = need.readsChamber ? [...chambersBefore(dossier).keys()] : []
  const allowed = can(actor, readAction(step.station))
  return {
    state: 'needed',
    words: secondCheckText(need),
    cannot: allowed ? (taker === actor.personId ? secondCheckRefusals.taker : '') : 'Sign in as a machinist to do it.',
    takenBy: taker === null ? '' : ((await namesOf([taker])).get(taker) ?? ''),
    chambers:
      !need.readsChamber || read.length > 0
        ? read
        : Array.from({ length: dossier.chambers }, (_, at) => String(at + 1)),
  }
}
