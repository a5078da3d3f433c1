import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { newId } from '@/lib/data/ids'
import { shopOf } from '@/lib/data/shop'
import { taxOf } from '@/lib/data/tax-rates'
import { write, type Moment } from '@/lib/data/write'
import type { AddPriceItem } from '@/lib/schemas/price'
import { rowOf } from './price-item-row'

export async function addPriceItem(actor: Actor, input: AddPriceItem, moment: Moment): Promise<{ itemId: string }> {
  must(allow(actor, 'settings.change'))
  return write(actor, moment, async (ctx) => {
    const id = newId(ctx.now)
    const row = rowOf(input, await taxOf(ctx.tx, input.tax, 'tax'), await shopOf(ctx.tx))
    await ctx.tx.priceItem.create({ data: { id, ...row, createdAt: ctx.now } })
    ctx.audit({ action: 'price-item.add', subjectId: id, changes: row })
    return { itemId: id }
  })
}
