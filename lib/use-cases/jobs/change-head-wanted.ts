import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { lastChange } from '@/lib/data/audit-trail'
import { wantedOnVisit } from '@/lib/data/stored/wanted'
import { bumpVisit, visitById } from '@/lib/data/visits'
import { write, type Moment } from '@/lib/data/write'
import { refreshRoute } from '@/lib/dossier/refresh'
import { refuseReleased } from '@/lib/dossier/refuse-closed'
import { wantedChanges, wantedNames } from '@/lib/dossier/wanted-changes'
import { keptWanted, type ChangeHeadWanted } from '@/lib/schemas/wanted'
import { refuseConflict } from './refuse-conflict'

/** Where one head departs from what is wanted of the others on its job. */
export async function changeHeadWanted(
  actor: Actor,
  input: ChangeHeadWanted,
  moment: Moment,
): Promise<{ visitId: string }> {
  must(allow(actor, 'job.change'))
  return write(actor, moment, async (ctx) => {
    const visit = await visitById(ctx.tx, input.visitId)
    const { id: visitId, jobId } = visit
    const after = keptWanted(input.wanted)
    const changes = wantedChanges(wantedOnVisit.read(visit.wanted, visitId), after)
    if (Object.keys(changes).length === 0) return { visitId }
    refuseReleased(visit)
    if (visit.version !== input.version) {
      refuseConflict('this head', await lastChange(ctx.tx, 'visit', visitId), changes, wantedNames)
    }
    await bumpVisit(ctx.tx, visit)
    await ctx.tx.visit.update({ where: { id: visitId }, data: { wanted: wantedOnVisit.write(after) } })
    ctx.audit({ action: 'visit.change-wanted', subjectId: visitId, jobId, visitId, changes })
    await refreshRoute(ctx.tx, visitId, ctx.now)
    return { visitId }
  })
}
