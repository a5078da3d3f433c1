import { allow, can } from '@/lib/core/access/can'
import { sees } from '@/lib/core/access/fields'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { dayIn } from '@/lib/core/shop/calendar'
import { db } from '@/lib/data/db'
import { shopOf } from '@/lib/data/shop'
import { proposedTag } from '@/lib/data/tags'
import { supplyById } from '@/lib/data/supply'
import { supplyView, type SupplyView } from '@/lib/data/supply-view'

export type { SupplyLineView, SupplyView } from '@/lib/data/supply-view'

export type SupplyPage = SupplyView & {
  readonly may: { readonly order: boolean; readonly receive: boolean; readonly cost: boolean }
  /** The number that the next head gets when none is typed. */
  readonly nextTag: string
}

/** One supply order: what is on it, for whom, what came. Cost stays with those who may see it. */
export async function seeSupply(actor: Actor, orderId: string, now: Date): Promise<SupplyPage> {
  must(allow(actor, 'outside.see'))
  const client = await db()
  const order = await supplyById(client, orderId)
  const { timeZone } = await shopOf(client)
  const may = {
    order: can(actor, 'supply.order'),
    receive: can(actor, 'supply.receive'),
    cost: sees(actor, 'supply cost'),
  }
  return {
    ...supplyView(order, { today: dayIn(timeZone, now), timeZone, withCost: may.cost }),
    may,
    nextTag: await proposedTag(client),
  }
}
