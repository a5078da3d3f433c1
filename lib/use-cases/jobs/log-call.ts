import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { newId } from '@/lib/data/ids'
import { addCall, jobById } from '@/lib/data/jobs'
import { write, type Moment } from '@/lib/data/write'
import type { LogCallInput } from '@/lib/schemas/job'

/** Writes down a telephone call. What was said may hold contact data, so the audit says only that there was a call. */
export async function logCall(actor: Actor, input: LogCallInput, moment: Moment): Promise<{ id: string }> {
  must(allow(actor, 'call.log'))
  return write(actor, moment, async (ctx) => {
    const job = await jobById(ctx.tx, input.jobId)
    const id = newId(ctx.now)
    await addCall(ctx, job.id, id, input.text)
    ctx.audit({ action: 'call.log', subjectId: id, jobId: job.id })
    return { id }
  })
}
