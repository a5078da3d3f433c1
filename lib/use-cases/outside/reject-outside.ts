import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { lineOfOrder, type LineRecord } from '@/lib/data/outside'
import { addEvent, bumpVisit, visitById } from '@/lib/data/visits'
import { refreshRoute } from '@/lib/dossier/refresh'
import { conflictUnless, write, type Moment, type Write } from '@/lib/data/write'
import type { rejectOutsideSchema } from '@/lib/schemas/outside'
import { refuseReleased } from '@/lib/dossier/refuse-closed'

/** What a vendor sent back is not taken as it is: the work is owed again, and whose cost that is stands with it. */
export async function rejectOutside(actor: Actor, input: z.output<typeof rejectOutsideSchema>, moment: Moment) {
  must(allow(actor, 'outside.receive'))
  return write(actor, moment, async (ctx) => {
    const line = await lineOfOrder(ctx.tx, input.orderId, input.visitId)
    const visit = await visitById(ctx.tx, input.visitId)
    refuseReleased(visit)
    if (line.receivedAt === null) {
      throw new RefusedError({
        code: 'wrong-state',
        message: 'This head is not back yet. Receive it first, then reject it.',
      })
    }
    await bumpVisit(ctx.tx, visit)
    await rejectLine(ctx, line, visit, { why: input.why, redoCost: input.redoCost })
    await refreshRoute(ctx.tx, visit.id, ctx.now)
    return { number: line.order.number }
  })
}

/** The rows of a rejection; the caller has the visit's lock and refreshes its route. */
export async function rejectLine(
  ctx: Write,
  line: Pick<LineRecord, 'id' | 'orderId'>,
  visit: { readonly id: string; readonly jobId: string },
  { why, redoCost }: { readonly why: string; readonly redoCost: string },
): Promise<void> {
  const changed = await ctx.tx.outsideOrderVisit.updateMany({
    where: { id: line.id, rejectedAt: null },
    data: { rejectedAt: ctx.now, rejectedById: ctx.actor.personId, rejectedWhy: why, redoCost },
  })
  conflictUnless(changed, 'the rejection of this head')
  await addEvent(ctx, visit.id, 'reject', null, { orderId: line.orderId, note: why })
  ctx.audit({
    action: 'outside-order.reject',
    subjectId: line.orderId,
    visitId: visit.id,
    jobId: visit.jobId,
    changes: { why, redoCost },
  })
}
