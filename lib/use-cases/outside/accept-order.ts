import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { bumpOrder, orderToChange } from '@/lib/data/outside'
import { addPromise } from '@/lib/data/vendor-orders'
import { write, type Moment } from '@/lib/data/write'
import type { acceptOrderSchema } from '@/lib/schemas/outside'

/** The vendor has taken the order on, with the day they give then, if they give one. */
export async function acceptOrder(actor: Actor, input: z.output<typeof acceptOrderSchema>, moment: Moment) {
  must(allow(actor, 'outside.send'))
  return write(actor, moment, async (ctx) => {
    const order = await orderToChange(ctx.tx, input.orderId)
    const { promisedOn } = input
    await bumpOrder(ctx, order, input.version, {
      acceptedAt: order.acceptedAt ?? ctx.now,
      ...(promisedOn === null ? {} : { promisedOn }),
    })
    if (promisedOn !== null) {
      await addPromise(ctx, 'outside', { orderId: order.id, promisedOn, note: input.note || 'when they accepted' })
    }
    ctx.audit({
      action: 'outside-order.accept',
      subjectId: order.id,
      changes: { promisedOn, note: input.note },
    })
    return { number: order.number }
  })
}
