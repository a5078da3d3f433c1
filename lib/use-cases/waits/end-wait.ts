import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { bumpVisit, visitById } from '@/lib/data/visits'
import { refreshRoute } from '@/lib/dossier/refresh'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { endWaitSchema } from '@/lib/schemas/visit'

/** The parts are here. */
export async function endWait(actor: Actor, input: z.output<typeof endWaitSchema>, moment: Moment) {
  must(allow(actor, 'wait.end'))
  return write(actor, moment, async (ctx) => {
    const wait = await ctx.tx.partsWait.findUnique({ where: { id: input.waitId } })
    if (!wait) throw new RefusedError({ code: 'not-found', message: 'There is no such wait here.' })
    const visit = await visitById(ctx.tx, wait.visitId)
    const changed = await ctx.tx.partsWait.updateMany({
      where: { id: wait.id, version: input.version, arrivedAt: null },
      data: { arrivedAt: ctx.now, version: { increment: 1 } },
    })
    conflictUnless(changed, 'this wait')
    await bumpVisit(ctx.tx, visit)
    ctx.audit({
      action: 'parts-wait.end',
      subjectId: wait.id,
      visitId: visit.id,
      jobId: visit.jobId,
    })
    await refreshRoute(ctx.tx, visit.id, ctx.now)
    return { visitId: visit.id }
  })
}
