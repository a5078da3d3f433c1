import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { holdById } from '@/lib/data/holds'
import { bumpVisit, visitById } from '@/lib/data/visits'
import { refreshRoute } from '@/lib/dossier/refresh'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { decideHoldSchema } from '@/lib/schemas/visit'

/** The owner's decision ends a hold. Scrap ends the visit; return as is opens that way out; the others let work go on. */
export async function decideHold(actor: Actor, input: z.output<typeof decideHoldSchema>, moment: Moment) {
  must(allow(actor, 'hold.decide'))
  return write(actor, moment, async (ctx) => {
    const hold = await holdById(ctx.tx, input.holdId)
    const visit = await visitById(ctx.tx, hold.visitId)
    const changed = await ctx.tx.hold.updateMany({
      where: { id: hold.id, version: input.version, decidedAt: null },
      data: {
        decision: input.decision,
        decisionNote: input.note,
        customerYes: input.customerYes,
        decidedAt: ctx.now,
        decidedById: actor.personId,
        version: { increment: 1 },
      },
    })
    conflictUnless(changed, 'this hold')
    await bumpVisit(ctx.tx, visit)
    if (input.decision === 'scrap')
      await ctx.tx.visit.update({ where: { id: visit.id }, data: { scrappedAt: ctx.now } })
    ctx.audit({
      action: 'hold.decide',
      subjectId: hold.id,
      visitId: visit.id,
      jobId: visit.jobId,
      changes: { decision: input.decision, note: input.note },
    })
    await refreshRoute(ctx.tx, visit.id, ctx.now)
    return { visitId: visit.id }
  })
}
