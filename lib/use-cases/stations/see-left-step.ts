import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { stepLabel } from '@/lib/core/route/table'
import type { Station, StepKey } from '@/lib/core/route/step-ids'
import type { RouteStep } from '@/lib/core/route/types'
import { headLabel } from '@/lib/core/shop/tag-number'
import { db } from '@/lib/data/db'
import { currentRules } from '@/lib/data/settings'
import { loadDossier } from '@/lib/dossier/dossier'

export type LeftStep = {
  readonly headId: string
  readonly tag: string
  readonly label: string
  /** What is open on this head at the same station. */
  readonly open: readonly RouteStep[]
}

const isOpen = ({ state }: RouteStep): boolean => !['done', 'waived', 'not needed'].includes(state)

/** A step that the head's route does not have, or no longer has: its name, and where to go on. */
export async function seeLeftStep(actor: Actor, visitId: string, key: StepKey, station: Station): Promise<LeftStep> {
  must(allow(actor, 'job.see'))
  const client = await db()
  const { visit, route } = await loadDossier(client, visitId)
  return {
    headId: visit.headId,
    tag: headLabel(visit),
    label: stepLabel(key.stepId, await currentRules(client)),
    open: route.filter((step) => step.station === station && isOpen(step)),
  }
}
