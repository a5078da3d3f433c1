import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { bumpOrder, orderToChange } from '@/lib/data/outside'
import { shopOf } from '@/lib/data/shop'
import { write, type Moment } from '@/lib/data/write'
import type { noteOutsideCostSchema } from '@/lib/schemas/outside'
import { minorAt } from '@/lib/core/money/price-of'

/** What the vendor's work and the freight came to. */
export async function noteOutsideCost(actor: Actor, input: z.output<typeof noteOutsideCostSchema>, moment: Moment) {
  must(allow(actor, 'outside.cost'))
  return write(actor, moment, async (ctx) => {
    const order = await orderToChange(ctx.tx, input.orderId)
    const shop = await shopOf(ctx.tx)
    const minor = (text: string, field: string) => (text === '' ? null : minorAt(text, shop, field))
    const costMinor = minor(input.cost, 'cost')
    const freightMinor = minor(input.freightCost, 'freightCost')
    await bumpOrder(ctx, order, input.version, { costMinor, freightMinor })
    ctx.audit({
      action: 'outside-order.set-cost',
      subjectId: order.id,
      changes: { costMinor, freightMinor },
    })
    return { number: order.number }
  })
}
