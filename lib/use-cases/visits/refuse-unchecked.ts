import { RefusedError } from '@/lib/core/errors'
import { isDepth, secondCheckNeeded } from '@/lib/core/route/second-check'
import type { RouteStep } from '@/lib/core/route/types'
import type { Entry } from '@/lib/dossier/add-readings'
import type { Dossier } from '@/lib/dossier/dossier'
import { secondCheckOf } from '@/lib/dossier/second-check'
import { secondCheckRefusals, secondCheckText } from '@/lib/words/second-check'

/**
 * No depth is kept before the second check that the shop asks for, and whoever did that check makes no cut: two people look
 * at it, or it is worth nothing. `ticks`: the step is ticked with it.
 */
export function refuseUnchecked(
  head: Dossier,
  step: RouteStep,
  personId: string,
  { readings, ticks }: { readonly readings: Entry['readings']; readonly ticks: boolean },
): void {
  const cuts = ticks || readings.some(({ kind, text }) => isDepth(kind) && text !== '')
  if (!cuts) return
  const need = secondCheckNeeded(head.facts, step)
  if (need) throw new RefusedError({ code: 'wrong-state', message: secondCheckText(need) })
  if (head.facts.settings.secondCheckDeeperThanIn > 0 && secondCheckOf(head, step)?.byId === personId) {
    throw new RefusedError({ code: 'wrong-state', message: secondCheckRefusals.checker })
  }
}
