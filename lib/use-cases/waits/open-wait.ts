import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { loadDossier } from '@/lib/dossier/dossier'
import { write, type Moment } from '@/lib/data/write'
import type { partsWaitSchema } from '@/lib/schemas/visit'
import { addToHead } from '@/lib/dossier/add-to-head'
import { findStep } from '@/lib/dossier/find-step'
import { refuseReleased } from '@/lib/dossier/refuse-closed'

/** A step waits for parts: what, from whom, promised when. */
export async function openWait(actor: Actor, input: z.output<typeof partsWaitSchema>, moment: Moment) {
  must(allow(actor, 'wait.open'))
  return write(actor, moment, async (ctx) => {
    const { visit, route } = await loadDossier(ctx.tx, input.visitId)
    const { stepId, occurrence } = findStep(route, input.step)
    refuseReleased(visit)
    const { what, fromWhom, promisedOn } = input
    const opened = { openedAt: ctx.now, openedById: actor.personId }
    const waitId = await addToHead(ctx, visit, { action: 'parts-wait.open', changes: { what } }, (id) =>
      ctx.tx.partsWait.create({
        data: { id, visitId: visit.id, stepId, occurrence, what, fromWhom, promisedOn, ...opened },
      }),
    )
    return { waitId }
  })
}
