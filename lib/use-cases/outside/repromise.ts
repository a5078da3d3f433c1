import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { bumpOrder, orderToChange } from '@/lib/data/outside'
import { addPromise } from '@/lib/data/vendor-orders'
import { write, type Moment } from '@/lib/data/write'
import type { repromiseSchema } from '@/lib/schemas/outside'

/** The vendor gave another day; whoever names one has taken the order on. Every promise stays on record. */
export async function repromise(actor: Actor, input: z.output<typeof repromiseSchema>, moment: Moment) {
  must(allow(actor, 'outside.send'))
  return write(actor, moment, async (ctx) => {
    const order = await orderToChange(ctx.tx, input.orderId)
    const { promisedOn } = input
    await bumpOrder(ctx, order, input.version, { promisedOn, acceptedAt: order.acceptedAt ?? ctx.now })
    await addPromise(ctx, 'outside', { orderId: order.id, promisedOn, note: input.note })
    ctx.audit({
      action: 'outside-order.repromise',
      subjectId: order.id,
      changes: { promisedOn },
    })
    return { promisedOn }
  })
}
