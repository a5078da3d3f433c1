import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { cancelJobRow, jobById } from '@/lib/data/jobs'
import { accountOf, endPrice, lockAccount } from '@/lib/data/prices'
import { write, type Moment } from '@/lib/data/write'
import { loadDossiers } from '@/lib/dossier/dossier'
import { endVisit } from '@/lib/dossier/end-visit'
import { hasLeft } from '@/lib/dossier/has-left'
import type { CancelJobInput } from '@/lib/schemas/ordinary'

export type Cancelled = {
  /** Heads that are here and go back as they are, and those that never came. */
  readonly returned: readonly string[]
  readonly takenOff: readonly string[]
  /** What the customer gets back, in minor units. */
  readonly owedBackMinor: number
}

/**
 * Cancels a job: its heads that are here go back as they are, those that did not come are taken off. Price lines that are on
 * no invoice may be removed with it; what was paid beyond the rest is owed back.
 */
export async function cancelJob(actor: Actor, input: CancelJobInput, moment: Moment): Promise<Cancelled> {
  must(allow(actor, 'job.change'))
  return write(actor, moment, async (ctx) => {
    await lockAccount(ctx.tx, input.jobId)
    const job = await jobById(ctx.tx, input.jobId)
    const heads = (await loadDossiers(ctx.tx, { jobId: job.id })).filter(({ visit }) => !hasLeft(visit))
    if (heads.length === 0) {
      const message = 'Every head of this job has left. There is nothing to cancel.'
      throw new RefusedError({ code: 'wrong-state', message })
    }
    const returned: string[] = []
    const takenOff: string[] = []
    for (const head of heads) {
      const how = await endVisit(ctx, head, input.reason)
      ;(how === 'returned' ? returned : takenOff).push(head.label)
    }
    if (input.removePrices) {
      const { prices } = await accountOf(ctx.tx, job.id)
      for (const { id, invoice } of prices) {
        if (invoice === null) await endPrice(ctx, job.id, { lineId: id, why: input.reason })
      }
    }
    await cancelJobRow(ctx, job.id, input.version, input.reason)
    const { dueMinor } = await accountOf(ctx.tx, job.id)
    const owedBackMinor = Math.max(0, -dueMinor)
    ctx.audit({
      action: 'job.cancel',
      subjectId: job.id,
      jobId: job.id,
      changes: { reason: input.reason, returned, takenOff, ...(owedBackMinor > 0 ? { owedBackMinor } : {}) },
    })
    return { returned, takenOff, owedBackMinor }
  })
}
