import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { lastChange } from '@/lib/data/audit-trail'
import { db } from '@/lib/data/db'
import { shopOf } from '@/lib/data/shop'
import { shopBlock } from '@/lib/dossier/shop-block'

/** The shop's own facts, for the page that changes them. */
export async function seeShop(actor: Actor) {
  must(allow(actor, 'settings.change'))
  const client = await db()
  const shop = await shopOf(client)
  return {
    shop,
    /** As it stands at the head of the papers. */
    block: shopBlock(shop),
    last: await lastChange(client, 'shop', '1'),
    lastLogo: await lastChange(client, 'shop-logo', '1'),
  }
}
