import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { priceItemById } from '@/lib/data/price-list'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { RetirePriceItem } from '@/lib/schemas/price'

/** Takes a price off the list, or brings a retired one back. Lines that stand on jobs stay. */
export async function retirePriceItem(
  actor: Actor,
  input: RetirePriceItem,
  moment: Moment,
): Promise<{ itemId: string }> {
  must(allow(actor, 'settings.change'))
  return write(actor, moment, async (ctx) => {
    const { itemId, version, retired } = input
    const item = await priceItemById(ctx.tx, itemId)
    const changed = await ctx.tx.priceItem.updateMany({
      where: { id: itemId, version },
      data: { retiredAt: retired ? ctx.now : null, version: { increment: 1 } },
    })
    conflictUnless(changed, item.text)
    const action = retired ? 'price-item.retire' : 'price-item.restore'
    ctx.audit({ action, subjectId: itemId })
    return { itemId }
  })
}
