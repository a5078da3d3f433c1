import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { orderToReceive, stepsOf } from '@/lib/data/outside'
import { addEvent, bumpVisit, visitById } from '@/lib/data/visits'
import { refreshRoute } from '@/lib/dossier/refresh'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { receiveOutsideSchema } from '@/lib/schemas/outside'
import { rejectLine } from './reject-outside'

/**
 * Heads are back from a vendor, all of the order or part of it. What the vendor was asked to do counts as done only as
 * far as it is confirmed here; the arrival steps are owed from now on.
 */
export async function receiveOutside(actor: Actor, input: z.output<typeof receiveOutsideSchema>, moment: Moment) {
  must(allow(actor, 'outside.receive'))
  return write(actor, moment, async (ctx) => {
    const order = await orderToReceive(ctx.tx, input.orderId)
    const scope = stepsOf(order.scope)
    for (const head of input.heads) {
      const line = order.visits.find((candidate) => candidate.visitId === head.visitId)
      if (!line) throw new RefusedError({ code: 'not-found', message: 'That head is not in this order.' })
      const visit = await visitById(ctx.tx, head.visitId)
      const changed = await ctx.tx.outsideOrderVisit.updateMany({
        where: { id: line.id, receivedAt: null },
        data: {
          receivedAt: ctx.now,
          receivedById: actor.personId,
          seatsIn: head.seatsIn,
          marksTyped: head.marksTyped,
          marksRead: head.marksRead,
          confirmed: head.confirmed.filter((step) => scope.includes(step)).join(','),
        },
      })
      conflictUnless(changed, 'the arrival of this head')
      await bumpVisit(ctx.tx, visit)
      await addEvent(ctx, visit.id, 'received', null, { orderId: order.id })
      ctx.audit({
        action: 'outside-order.receive',
        subjectId: order.id,
        visitId: visit.id,
        jobId: visit.jobId,
        changes: { confirmed: head.confirmed, marks: head.marksTyped },
      })
      if (head.rejectedWhy !== '') {
        await rejectLine(ctx, line, visit, { why: head.rejectedWhy, redoCost: head.redoCost })
      }
      await refreshRoute(ctx.tx, visit.id, ctx.now)
    }
    return { number: order.number, received: input.heads.length }
  })
}
