import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import { inShort } from '@/lib/core/route/completeness'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { returnedNotDone } from '@/lib/data/stored/records'
import { bumpVisit, addEvent } from '@/lib/data/visits'
import { loadDossier } from '@/lib/dossier/dossier'
import { refreshRoute } from '@/lib/dossier/refresh'
import { write, type Moment } from '@/lib/data/write'
import type { returnAsIsSchema } from '@/lib/schemas/visit'
import { gapsOf } from '@/lib/dossier/gaps'
import { refuseClosed } from '@/lib/dossier/refuse-closed'
import { lackText } from '@/lib/words/lacks'

/** The other way out: a customer's property can always leave. The paper lists what was not done. */
export async function returnAsIs(actor: Actor, input: z.output<typeof returnAsIsSchema>, moment: Moment) {
  must(allow(actor, 'visit.return-as-is'))
  return write(actor, moment, async (ctx) => {
    const found = await loadDossier(ctx.tx, input.visitId)
    const { visit } = found
    refuseClosed(visit)
    await bumpVisit(ctx.tx, visit)
    const notDone = inShort(gapsOf(found)).map((gap) => lackText(gap.lack))
    await ctx.tx.returnedAsIs.create({
      data: {
        visitId: visit.id,
        reason: input.reason,
        notDone: returnedNotDone.write(notDone),
        at: ctx.now,
        byId: actor.personId,
      },
    })
    await addEvent(ctx, visit.id, 'return-as-is', null, { note: input.reason })
    ctx.audit({
      action: 'visit.return-as-is',
      subjectId: visit.id,
      visitId: visit.id,
      jobId: visit.jobId,
      changes: { reason: input.reason, notDone },
    })
    await refreshRoute(ctx.tx, visit.id, ctx.now)
    return { notDone }
  })
}
