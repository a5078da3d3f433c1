import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { newId } from '@/lib/data/ids'
import { bumpVisit } from '@/lib/data/visits'
import { loadDossier } from '@/lib/dossier/dossier'
import { refreshRoute } from '@/lib/dossier/refresh'
import { write, type Moment } from '@/lib/data/write'
import type { partsWaitSchema } from '@/lib/schemas/visit'
import { findStep } from '@/lib/dossier/find-step'
import { refuseReleased } from '@/lib/dossier/refuse-closed'

/** A step waits for parts: what, from whom, promised when. */
export async function openWait(actor: Actor, input: z.output<typeof partsWaitSchema>, moment: Moment) {
  must(allow(actor, 'wait.open'))
  return write(actor, moment, async (ctx) => {
    const { visit, route } = await loadDossier(ctx.tx, input.visitId)
    const step = findStep(route, input.step)
    refuseReleased(visit)
    await bumpVisit(ctx.tx, visit)
    const id = newId(ctx.now)
    await ctx.tx.partsWait.create({
      data: {
        id,
        visitId: visit.id,
        stepId: step.stepId,
        occurrence: step.occurrence,
        what: input.what,
        fromWhom: input.fromWhom,
        promisedOn: input.promisedOn,
        openedAt: ctx.now,
        openedById: actor.personId,
      },
    })
    ctx.audit({
      action: 'parts-wait.open',
      subjectId: id,
      visitId: visit.id,
      jobId: visit.jobId,
      changes: { what: input.what },
    })
    await refreshRoute(ctx.tx, visit.id, ctx.now)
    return { waitId: id }
  })
}
