import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { changesBetween } from '@/lib/data/audit-trail'
import { priceItemById } from '@/lib/data/price-list'
import { shopOf } from '@/lib/data/shop'
import { taxOf } from '@/lib/data/tax-rates'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { ChangePriceItem } from '@/lib/schemas/price'
import { rowOf } from './price-item-row'

/** Changes what the list asks from now on. Lines that stand on jobs, and kept estimates, stay as they were said. */
export async function changePriceItem(
  actor: Actor,
  input: ChangePriceItem,
  moment: Moment,
): Promise<{ itemId: string }> {
  must(allow(actor, 'settings.change'))
  return write(actor, moment, async (ctx) => {
    const { itemId, version } = input
    const before = await priceItemById(ctx.tx, itemId)
    const after = rowOf(input, await taxOf(ctx.tx, input.tax, 'tax'), await shopOf(ctx.tx))
    const changed = await ctx.tx.priceItem.updateMany({
      where: { id: itemId, version },
      data: { ...after, version: { increment: 1 } },
    })
    conflictUnless(changed, before.text)
    const changes = changesBetween(before, after)
    ctx.audit({ action: 'price-item.change', subjectId: itemId, changes })
    return { itemId }
  })
}
