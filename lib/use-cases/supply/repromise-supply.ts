import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { bumpSupply, promiseSupply, supplyById } from '@/lib/data/supply'
import { write, type Moment } from '@/lib/data/write'
import type { RepromiseSupply } from '@/lib/schemas/supply'

/** The supplier gave another day. Every promise stays on record. */
export async function repromiseSupply(actor: Actor, input: RepromiseSupply, moment: Moment) {
  must(allow(actor, 'supply.order'))
  return write(actor, moment, async (ctx) => {
    const order = await supplyById(ctx.tx, input.orderId)
    const { promisedOn } = input
    await bumpSupply(ctx, order, input.version, { promisedOn })
    await promiseSupply(ctx, { orderId: order.id, promisedOn, note: input.note }, order.vendor)
    ctx.audit({
      action: 'supply-order.repromise',
      subjectId: order.id,
      ...(order.jobId === null ? {} : { jobId: order.jobId }),
      changes: { number: order.number, promisedOn },
    })
    return { promisedOn }
  })
}
