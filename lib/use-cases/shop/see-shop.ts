import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { lastChange } from '@/lib/data/audit-trail'
import { db } from '@/lib/data/db'
import { shopOf } from '@/lib/data/shop'

/** The shop's own facts, for the page that changes them. */
export async function seeShop(actor: Actor) {
  must(allow(actor, 'settings.change'))
  const client = await db()
  return { shop: await shopOf(client), last: await lastChange(client, 'shop', '1') }
}
