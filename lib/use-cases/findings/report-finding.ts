import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { newId } from '@/lib/data/ids'
import { bumpVisit, visitById } from '@/lib/data/visits'
import { refreshRoute } from '@/lib/dossier/refresh'
import { write, type Moment } from '@/lib/data/write'
import type { reportFindingSchema } from '@/lib/schemas/visit'
import { refuseOnOrder, refuseReleased } from '@/lib/dossier/refuse-closed'

/** Something seen that was not ordered. The counter prices it and asks the customer. */
export async function reportFinding(actor: Actor, input: z.output<typeof reportFindingSchema>, moment: Moment) {
  must(allow(actor, 'finding.report'))
  return write(actor, moment, async (ctx) => {
    const visit = await visitById(ctx.tx, input.visitId)
    refuseReleased(visit)
    refuseOnOrder(visit)
    await bumpVisit(ctx.tx, visit)
    const id = newId(ctx.now)
    await ctx.tx.finding.create({
      data: {
        id,
        visitId: visit.id,
        stepId: input.stepId,
        what: input.what,
        priceMinor: null,
        addsWork: '',
        reportedAt: ctx.now,
        reportedById: actor.personId,
        askedHow: '',
        answeredBy: '',
      },
    })
    ctx.audit({
      action: 'finding.report',
      subjectId: id,
      visitId: visit.id,
      jobId: visit.jobId,
      changes: { what: input.what },
    })
    await refreshRoute(ctx.tx, visit.id, ctx.now)
    return { findingId: id }
  })
}
