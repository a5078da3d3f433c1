import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { phoneCountry } from '@/lib/core/shop/country'
import { lastChange } from '@/lib/data/audit-trail'
import { db } from '@/lib/data/db'
import { phoneCountries } from '@/lib/data/phone'
import { shopOf } from '@/lib/data/shop'
import { shopBlock } from '@/lib/dossier/shop-block'

/** The shop's own facts, for the page that changes them. */
export async function seeShop(actor: Actor) {
  must(allow(actor, 'settings.change'))
  const client = await db()
  const shop = await shopOf(client)
  return {
    shop,
    /** Whose telephone numbers can be read: two letters and a name, by name. */
    countries: countriesByName(),
    /** The one that counts while none is chosen. */
    ownCountry: phoneCountry({ ...shop, country: '' }),
    /** As it stands at the head of the papers. */
    block: shopBlock(shop),
    last: await lastChange(client, 'shop', '1'),
    lastLogo: await lastChange(client, 'shop-logo', '1'),
  }
}

function countriesByName(): { readonly code: string; readonly name: string }[] {
  const names = new Intl.DisplayNames('en', { type: 'region' })
  return phoneCountries()
    .map((code) => ({ code, name: names.of(code) ?? code }))
    .toSorted((a, b) => a.name.localeCompare(b.name, 'en'))
}
