import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { newId } from '@/lib/data/ids'
import { bumpVisit, refreshRoute, visitById } from '@/lib/data/visits'
import { write, type Moment } from '@/lib/data/write'
import type { openHoldSchema } from '@/lib/schemas/visit'
import { refuseClosed, refuseOnOrder } from '../visits/refuse-closed'

/** Something is wrong: nothing more is ticked on this head until the owner has decided. */
export async function openHold(actor: Actor, input: z.output<typeof openHoldSchema>, moment: Moment) {
  must(allow(actor, 'hold.open'))
  return write(actor, moment, async (w) => {
    const visit = await visitById(w.tx, input.visitId)
    refuseClosed(visit)
    refuseOnOrder(visit)
    await bumpVisit(w.tx, visit)
    const id = newId(w.now)
    await w.tx.hold.create({
      data: {
        id,
        visitId: visit.id,
        stepId: input.stepId,
        reason: input.reason,
        openedAt: w.now,
        openedById: actor.personId,
        decisionNote: '',
        customerYes: '',
      },
    })
    w.audit({
      action: 'hold',
      subject: 'hold',
      subjectId: id,
      visitId: visit.id,
      jobId: visit.jobId,
      changes: { reason: input.reason },
    })
    await refreshRoute(w.tx, visit.id, w.now)
    return { holdId: id }
  })
}
