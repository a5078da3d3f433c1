import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { bumpVisit, addEvent, refreshRoute, visitWithRoute } from '@/lib/data/visits'
import { write, type Moment } from '@/lib/data/write'
import type { returnAsIsSchema } from '@/lib/schemas/visit'
import { gapsOf } from './gaps'
import { refuseClosed } from './refuse-closed'

/** The other way out: a customer's property can always leave. The paper lists what was not done. */
export async function returnAsIs(actor: Actor, input: z.output<typeof returnAsIsSchema>, moment: Moment) {
  must(allow(actor, 'visit.return-as-is'))
  return write(actor, moment, async (w) => {
    const found = await visitWithRoute(w.tx, input.visitId)
    const { visit } = found
    refuseClosed(visit)
    await bumpVisit(w.tx, visit)
    const notDone = gapsOf(found).map((gap) => gap.message)
    await w.tx.returnedAsIs.create({
      data: {
        visitId: visit.id,
        reason: input.reason,
        notDone: JSON.stringify(notDone),
        at: w.now,
        byId: actor.personId,
      },
    })
    await addEvent(w, visit.id, 'return-as-is', null, { note: input.reason })
    w.audit({
      action: 'return-as-is',
      subject: 'visit',
      subjectId: visit.id,
      visitId: visit.id,
      jobId: visit.jobId,
      changes: { reason: input.reason, notDone },
    })
    await refreshRoute(w.tx, visit.id, w.now)
    return { notDone }
  })
}
