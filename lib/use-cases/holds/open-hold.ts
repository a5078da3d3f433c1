import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { newId } from '@/lib/data/ids'
import { bumpVisit, visitById } from '@/lib/data/visits'
import { refreshRoute } from '@/lib/dossier/refresh'
import { write, type Moment } from '@/lib/data/write'
import type { openHoldSchema } from '@/lib/schemas/visit'
import { refuseClosed, refuseOnOrder } from '@/lib/dossier/refuse-closed'

/** Something is wrong: nothing more is ticked on this head until the owner has decided. */
export async function openHold(actor: Actor, input: z.output<typeof openHoldSchema>, moment: Moment) {
  must(allow(actor, 'hold.open'))
  return write(actor, moment, async (ctx) => {
    const visit = await visitById(ctx.tx, input.visitId)
    refuseClosed(visit)
    refuseOnOrder(visit)
    await bumpVisit(ctx.tx, visit)
    const id = newId(ctx.now)
    await ctx.tx.hold.create({
      data: {
        id,
        visitId: visit.id,
        stepId: input.stepId,
        reason: input.reason,
        openedAt: ctx.now,
        openedById: actor.personId,
        decisionNote: '',
        customerYes: '',
      },
    })
    ctx.audit({
      action: 'hold.open',
      subjectId: id,
      visitId: visit.id,
      jobId: visit.jobId,
      changes: { reason: input.reason },
    })
    await refreshRoute(ctx.tx, visit.id, ctx.now)
    return { holdId: id }
  })
}
