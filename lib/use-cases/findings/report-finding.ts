import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { visitById } from '@/lib/data/visits'
import { write, type Moment } from '@/lib/data/write'
import type { reportFindingSchema } from '@/lib/schemas/visit'
import { addToHead } from '@/lib/dossier/add-to-head'
import { refuseOnOrder, refuseReleased } from '@/lib/dossier/refuse-closed'

/** Something seen that was not ordered. The counter prices it and asks the customer. */
export async function reportFinding(actor: Actor, input: z.output<typeof reportFindingSchema>, moment: Moment) {
  must(allow(actor, 'finding.report'))
  return write(actor, moment, async (ctx) => {
    const visit = await visitById(ctx.tx, input.visitId)
    refuseReleased(visit)
    refuseOnOrder(visit)
    const { stepId, what } = input
    const asked = { priceMinor: null, addsWork: '', askedHow: '', answeredBy: '' }
    const reported = { reportedAt: ctx.now, reportedById: actor.personId }
    const findingId = await addToHead(ctx, visit, { action: 'finding.report', changes: { what } }, (id) =>
      ctx.tx.finding.create({ data: { id, visitId: visit.id, stepId, what, ...reported, ...asked } }),
    )
    return { findingId }
  })
}
