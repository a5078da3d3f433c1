import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { bumpSupply, supplyById } from '@/lib/data/supply'
import { write, type Moment } from '@/lib/data/write'
import type { EndSupply } from '@/lib/schemas/supply'

/** The rest does not come: cancelled by us, or the supplier has none. What it was for can be ordered again. */
export async function endSupply(actor: Actor, input: EndSupply, moment: Moment) {
  must(allow(actor, 'supply.order'))
  return write(actor, moment, async (ctx) => {
    const order = await supplyById(ctx.tx, input.orderId)
    await bumpSupply(ctx, order, input.version, { endedAt: ctx.now, endReason: input.reason })
    ctx.audit({
      action: 'supply-order.end',
      subjectId: order.id,
      ...(order.jobId === null ? {} : { jobId: order.jobId }),
      changes: { number: order.number, reason: input.reason },
    })
    return { number: order.number }
  })
}
