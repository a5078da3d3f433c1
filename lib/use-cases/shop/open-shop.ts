import type { Actor } from '@/lib/core/access/roles'
import { RefusedError } from '@/lib/core/errors'
import { nextNumber } from '@/lib/data/counters'
import { newId } from '@/lib/data/ids'
import { hasPeople } from '@/lib/data/people'
import { write, type Moment } from '@/lib/data/write'
import type { FirstOwner, ShopFacts } from '@/lib/schemas/shop'
import { newPasswordHash } from '@/lib/data/passwords'

export type Opening = { readonly shop: ShopFacts; readonly owner: FirstOwner; readonly mode: 'demo' | 'shop' }

const decimalsOf = (currency: string): number =>
  new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2

/**
 * The shop's row and its first owner, together or not at all; refused for ever once there is a person. Whoever calls
 * this has made sure that it may be done: by the code of the console, or because it is a demo.
 */
export async function openShop({ shop, owner, mode }: Opening, moment: Moment): Promise<Actor> {
  const passwordHash = await newPasswordHash(owner.password, [shop.name, owner.name, owner.signIn], 'owner.password')
  const { name, signIn } = owner
  const personId = newId(moment.now)
  const actor: Actor = { personId, name, roles: ['owner'], grants: [] }
  return write(actor, moment, async (ctx) => {
    await nextNumber(ctx.tx, 'people changed') // one set-up after the other, on every database
    if (await hasPeople(ctx.tx)) throw new RefusedError({ code: 'not-found', message: 'This shop is already set up.' })
    const facts = { ...shop, currencyExponent: decimalsOf(shop.currency) }
    await ctx.tx.shop.upsert({
      where: { id: 1 },
      create: { id: 1, mode, ...facts, createdAt: ctx.now },
      update: facts,
    })
    await ctx.tx.person.create({
      data: { id: personId, name, signIn, passwordHash, roles: 'owner', grants: '', createdAt: ctx.now },
    })
    ctx.audit({ action: 'shop.open', subjectId: '1', changes: facts })
    ctx.audit({
      action: 'person.add',
      subjectId: personId,
      changes: { name, signIn, roles: 'owner' },
    })
    return actor
  })
}
