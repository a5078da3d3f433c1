import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { changesBetween, lastChange } from '@/lib/data/audit-trail'
import { jobById, updateJob } from '@/lib/data/jobs'
import { write, type Moment } from '@/lib/data/write'
import { sendByItself } from '@/lib/dossier/messages/send-by-itself'
import type { ChangeJobInput } from '@/lib/schemas/job'
import { refuseWithoutReason, said } from './change-reason'
import { changeVisit } from './change-visit'
import { refuseConflict } from './refuse-conflict'

const labels = { promiseOn: 'promise date', urgent: 'urgent', note: 'note', partsPlace: 'place of the parts' }

/**
 * Changes what may change after booking: promise, urgency, note, place of the parts; target, side and rack location of each
 * head. What somebody else changed since it was looked at is a conflict, unless both now say the same.
 */
export async function changeJob(actor: Actor, input: ChangeJobInput, moment: Moment): Promise<{ changed: number }> {
  must(allow(actor, 'job.change'))
  return write(actor, moment, async (ctx) => {
    const job = await jobById(ctx.tx, input.jobId)
    const { promiseOn, urgent, note, partsPlace } = input
    const after = { promiseOn, urgent, note, partsPlace }
    const changes = changesBetween(job, after)
    if ('promiseOn' in changes) refuseWithoutReason(input.reason)
    let changed = 0
    if (Object.keys(changes).length > 0) {
      if (job.version !== input.version) {
        refuseConflict('this job', await lastChange(ctx.tx, 'job', job.id), changes, labels)
      }
      await updateJob(ctx, job.id, input.version, after)
      ctx.audit({ action: 'job.change', subjectId: job.id, jobId: job.id, changes: said(changes, input.reason) })
      changed += 1
    }
    if (promiseOn !== null && 'promiseOn' in changes) await sendByItself(ctx, 'date-changed', job.id)
    for (const [at, visit] of input.visits.entries())
      changed += await changeVisit(ctx, job.id, visit, { field: `visits.${at}`, reason: input.reason })
    return { changed }
  })
}
