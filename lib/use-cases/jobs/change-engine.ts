import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must, RefusedError } from '@/lib/core/errors'
import { lastChange } from '@/lib/data/audit-trail'
import { putEngine } from '@/lib/data/booking'
import { jobById, updateJob, visitIdsOf } from '@/lib/data/jobs'
import { refreshRoute } from '@/lib/dossier/refresh'
import { write, type Moment } from '@/lib/data/write'
import type { ChangeEngineInput } from '@/lib/schemas/job'
import { engineOf } from './engine-of'

/** What is learned of the engine after booking; the routes of its heads follow. */
export async function changeEngine(actor: Actor, input: ChangeEngineInput, moment: Moment): Promise<{ jobId: string }> {
  must(allow(actor, 'job.change'))
  return write(actor, moment, async (ctx) => {
    const job = await jobById(ctx.tx, input.jobId)
    if (job.version !== input.version) {
      const last = await lastChange(ctx.tx, 'job', job.id)
      const message = `${last?.by || 'Somebody else'} changed this job first. Check the engine data, then save again.`
      throw new RefusedError({ code: 'conflict', message })
    }
    await updateJob(ctx, job.id, input.version, {})
    await putEngine(ctx, job.id, engineOf(input.engine))
    ctx.audit({
      action: 'job.change-engine',
      subjectId: job.id,
      jobId: job.id,
      changes: { engine: engineOf(input.engine) },
    })
    for (const visitId of await visitIdsOf(ctx.tx, job.id)) await refreshRoute(ctx.tx, visitId, ctx.now)
    return { jobId: job.id }
  })
}
