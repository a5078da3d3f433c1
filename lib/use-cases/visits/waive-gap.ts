import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { newId } from '@/lib/data/ids'
import { addEvent, bumpVisit } from '@/lib/data/visits'
import { loadDossier } from '@/lib/dossier/dossier'
import { refreshRoute } from '@/lib/dossier/refresh'
import { write, type Moment } from '@/lib/data/write'
import type { waiveGapSchema } from '@/lib/schemas/visit'
import { gapsOf } from '@/lib/dossier/gaps'
import { refuseOnOrder, refuseReleased } from '@/lib/dossier/refuse-closed'
import { lackText } from '@/lib/words/lacks'

/**
 * The owner, or a deputy, lets one gap pass, with a reason that prints. A hold or an unanswered finding cannot be waived:
 * they are decided.
 */
export async function waiveGap(actor: Actor, input: z.output<typeof waiveGapSchema>, moment: Moment) {
  must(allow(actor, 'visit.waive'))
  return write(actor, moment, async (ctx) => {
    const found = await loadDossier(ctx.tx, input.visitId)
    const { visit } = found
    refuseReleased(visit)
    refuseOnOrder(visit)
    const gap = gapsOf(found).find((candidate) => candidate.gap === input.gap)
    if (!gap)
      throw new RefusedError({
        code: 'conflict',
        message: 'This is no longer missing. Reload the page.',
      })
    if (gap.what === 'hold' || gap.what === 'finding') {
      throw new RefusedError({ code: 'wrong-state', message: 'A hold or a finding cannot be waived. Decide it first.' })
    }
    await bumpVisit(ctx.tx, visit)
    const id = newId(ctx.now)
    const { stepId, occurrence, orderId } = gap.step
    await ctx.tx.waiver.create({
      data: {
        id,
        visitId: visit.id,
        stepId,
        occurrence,
        orderId,
        gap: gap.gap,
        what: lackText(gap.lack),
        reason: input.reason,
        touchesCustomer: true,
        at: ctx.now,
        byId: actor.personId,
      },
    })
    if (gap.what === 'step') await addEvent(ctx, visit.id, 'waive', gap.step, { note: input.reason })
    ctx.audit({
      action: 'waiver.grant',
      subjectId: id,
      visitId: visit.id,
      jobId: visit.jobId,
      changes: { gap: gap.gap, reason: input.reason },
    })
    await refreshRoute(ctx.tx, visit.id, ctx.now)
    return { label: gap.label }
  })
}
