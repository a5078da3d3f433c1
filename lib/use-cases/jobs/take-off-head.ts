import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { write, type Moment } from '@/lib/data/write'
import { loadDossiers } from '@/lib/dossier/dossier'
import { endVisit } from '@/lib/dossier/end-visit'
import { hasLeft } from '@/lib/dossier/has-left'
import type { TakeOffHeadInput } from '@/lib/schemas/ordinary'

/** Takes one head off a job: one that is here goes back as it is. The last one is not taken off: the job is cancelled. */
export async function takeOffHead(actor: Actor, input: TakeOffHeadInput, moment: Moment): Promise<{ tag: string }> {
  must(allow(actor, 'job.change'))
  return write(actor, moment, async (ctx) => {
    const heads = await loadDossiers(ctx.tx, { jobId: input.jobId })
    const head = heads.find(({ visit }) => visit.id === input.visitId)
    if (!head) throw new RefusedError({ code: 'not-found', message: 'This head is not on this job.' })
    if (!heads.some((other) => other !== head && !hasLeft(other.visit))) {
      throw new RefusedError({ code: 'wrong-state', message: 'This is the last head of the job. Cancel the job.' })
    }
    await endVisit(ctx, head, input.reason)
    return { tag: head.label }
  })
}
