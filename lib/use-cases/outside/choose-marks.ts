import type { z } from 'zod'
import { marksFound } from '@/lib/core/at-mill/cut-at-step'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { marksInOneWay } from '@/lib/core/straightness/vendor-marks'
import { lineOfOrder } from '@/lib/data/outside'
import { bumpVisit } from '@/lib/data/visits'
import { write, type Moment } from '@/lib/data/write'
import { loadDossier } from '@/lib/dossier/dossier'
import { refreshRoute } from '@/lib/dossier/refresh'
import { refuseReleased } from '@/lib/dossier/refuse-closed'
import { markTexts } from '@/lib/dossier/vendor-marks'
import type { chooseMarksSchema } from '@/lib/schemas/outside'

/**
 * Says which of two ways a vendor's marks were meant. What stands on the head stays as it was typed; how it is read is kept
 * beside it.
 */
export async function chooseMarks(actor: Actor, input: z.output<typeof chooseMarksSchema>, moment: Moment) {
  must(allow(actor, 'outside.receive'))
  return write(actor, moment, async (ctx) => {
    const line = await lineOfOrder(ctx.tx, input.orderId, input.visitId)
    const dossier = await loadDossier(ctx.tx, input.visitId)
    const { visit } = dossier
    refuseReleased(visit)
    // Without what was chosen before: the choice is between the ways to read what stands on the head.
    const { text, readings } = marksFound(markTexts(dossier, { orderId: input.orderId }).slice(1))
    const chosen = readings[input.way]
    if (!chosen || text !== input.typed) {
      throw new RefusedError({ code: 'conflict', message: 'These marks were changed. Reload the page.' })
    }
    const marksRead = marksInOneWay(chosen)
    await ctx.tx.outsideOrderVisit.update({ where: { id: line.id }, data: { marksRead } })
    await bumpVisit(ctx.tx, visit)
    ctx.audit({
      action: 'outside-order.choose-marks',
      subjectId: input.orderId,
      visitId: visit.id,
      jobId: visit.jobId,
      changes: { marks: text, read: marksRead },
    })
    await refreshRoute(ctx.tx, visit.id, ctx.now)
    return { read: marksRead }
  })
}
