import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { changesBetween } from '@/lib/data/audit-trail'
import { bumpOrder, orderToChange } from '@/lib/data/outside'
import { write, type Moment } from '@/lib/data/write'
import type { changeOrderSchema } from '@/lib/schemas/outside'

/** How it travels, out and back. */
export async function changeOrder(actor: Actor, input: z.output<typeof changeOrderSchema>, moment: Moment) {
  must(allow(actor, 'outside.send'))
  return write(actor, moment, async (ctx) => {
    const { orderId, version, ...after } = input
    const before = await orderToChange(ctx.tx, orderId)
    await bumpOrder(ctx, before, version, after)
    ctx.audit({
      action: 'outside-order.change',
      subjectId: orderId,
      changes: changesBetween(before, after),
    })
    return { number: before.number }
  })
}
