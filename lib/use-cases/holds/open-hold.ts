import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { visitById } from '@/lib/data/visits'
import { write, type Moment } from '@/lib/data/write'
import type { openHoldSchema } from '@/lib/schemas/visit'
import { addToHead } from '@/lib/dossier/add-to-head'
import { refuseClosed, refuseOnOrder } from '@/lib/dossier/refuse-closed'

/** Something is wrong: nothing more is ticked on this head until the owner has decided. */
export async function openHold(actor: Actor, input: z.output<typeof openHoldSchema>, moment: Moment) {
  must(allow(actor, 'hold.open'))
  return write(actor, moment, async (ctx) => {
    const visit = await visitById(ctx.tx, input.visitId)
    refuseClosed(visit)
    refuseOnOrder(visit)
    const { stepId, reason } = input
    const opened = { openedAt: ctx.now, openedById: actor.personId, decisionNote: '', customerYes: '' }
    const holdId = await addToHead(ctx, visit, { action: 'hold.open', changes: { reason } }, (id) =>
      ctx.tx.hold.create({ data: { id, visitId: visit.id, stepId, reason, ...opened } }),
    )
    return { holdId }
  })
}
