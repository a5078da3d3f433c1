import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { phoneCountry } from '@/lib/core/shop/country'
import { changesBetween } from '@/lib/data/audit-trail'
import { readPhonesAnew } from '@/lib/data/customers'
import { shopOf } from '@/lib/data/shop'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { ChangeShop } from '@/lib/schemas/shop'

/** What stands at the head of the papers. Zone and currency stay as they were fixed at set-up. */
export async function changeShop(actor: Actor, input: ChangeShop, moment: Moment): Promise<{ name: string }> {
  must(allow(actor, 'settings.change'))
  return write(actor, moment, async (ctx) => {
    const { version, ...after } = input
    const before = await shopOf(ctx.tx)
    const changed = await ctx.tx.shop.updateMany({
      where: { id: 1, version },
      data: { ...after, version: { increment: 1 } },
    })
    conflictUnless(changed, 'the shop’s own facts')
    const country = phoneCountry({ ...before, ...after })
    if (country !== phoneCountry(before)) await readPhonesAnew(ctx.tx, country)
    const changes = changesBetween(before, after)
    ctx.audit({ action: 'shop.change', subjectId: '1', changes })
    return { name: after.name }
  })
}
