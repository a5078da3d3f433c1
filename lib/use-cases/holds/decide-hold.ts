import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { bumpVisit, refreshRoute, visitById } from '@/lib/data/visits'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { decideHoldSchema } from '@/lib/schemas/visit'

/** The owner's decision ends a hold. Scrap ends the visit; return as is opens that way out; the others let work go on. */
export async function decideHold(actor: Actor, input: z.output<typeof decideHoldSchema>, moment: Moment) {
  must(allow(actor, 'hold.decide'))
  return write(actor, moment, async (w) => {
    const hold = await w.tx.hold.findUnique({ where: { id: input.holdId } })
    if (!hold) throw new RefusedError({ code: 'not-found', message: 'There is no such hold here.' })
    const visit = await visitById(w.tx, hold.visitId)
    const changed = await w.tx.hold.updateMany({
      where: { id: hold.id, version: input.version, decidedAt: null },
      data: {
        decision: input.decision,
        decisionNote: input.note,
        customerYes: input.customerYes,
        decidedAt: w.now,
        decidedById: actor.personId,
        version: { increment: 1 },
      },
    })
    conflictUnless(changed, 'this hold')
    await bumpVisit(w.tx, visit)
    if (input.decision === 'scrap') await w.tx.visit.update({ where: { id: visit.id }, data: { scrappedAt: w.now } })
    w.audit({
      action: 'decide-hold',
      subject: 'hold',
      subjectId: hold.id,
      visitId: visit.id,
      jobId: visit.jobId,
      changes: { decision: input.decision, note: input.note },
    })
    await refreshRoute(w.tx, visit.id, w.now)
    return { visitId: visit.id }
  })
}
