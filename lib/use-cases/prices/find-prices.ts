import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { pickAsked } from '@/lib/core/find/pick'
import type { PricePick } from '@/lib/core/money/price-pick'
import { db } from '@/lib/data/db'
import { pricePicks } from '@/lib/data/price-picks'
import { shopOf } from '@/lib/data/shop'

/** Lines of the price list whose text holds what is typed. */
export async function findPrices(actor: Actor, input: { q: string }): Promise<readonly PricePick[]> {
  must(allow(actor, 'price.see'))
  const client = await db()
  return (await pricePicks(client, await shopOf(client), pickAsked(input.q))).rows
}
