import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { lastChange } from '@/lib/data/audit-trail'
import { jobById, updateJob, visitIdsOf } from '@/lib/data/jobs'
import { wantedOnJob } from '@/lib/data/stored/wanted'
import { write, type Moment } from '@/lib/data/write'
import { refreshRoute } from '@/lib/dossier/refresh'
import { wantedChanges, wantedNames } from '@/lib/dossier/wanted-changes'
import { keptWanted, type ChangeJobWanted } from '@/lib/schemas/wanted'
import { refuseConflict } from './refuse-conflict'

/** What the benches work to on all heads of a job; limits among it change what their routes ask. */
export async function changeJobWanted(
  actor: Actor,
  input: ChangeJobWanted,
  moment: Moment,
): Promise<{ jobId: string }> {
  must(allow(actor, 'job.change'))
  return write(actor, moment, async (ctx) => {
    const job = await jobById(ctx.tx, input.jobId)
    const after = keptWanted(input.wanted)
    const changes = wantedChanges(wantedOnJob.read(job.wanted, job.id), after)
    if (Object.keys(changes).length === 0) return { jobId: job.id }
    if (job.version !== input.version) {
      refuseConflict('this job', await lastChange(ctx.tx, 'job', job.id), changes, wantedNames)
    }
    await updateJob(ctx, job.id, input.version, { wanted: wantedOnJob.write(after) })
    ctx.audit({ action: 'job.change-wanted', subjectId: job.id, jobId: job.id, changes })
    for (const visitId of await visitIdsOf(ctx.tx, job.id)) await refreshRoute(ctx.tx, visitId, ctx.now)
    return { jobId: job.id }
  })
}
