import type { RouteRules } from '@/lib/core/route/rules'
import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import type { BenchShop } from '@/lib/core/options/bench-types'
import { dayIn } from '@/lib/core/shop/calendar'
import { benchShop } from '@/lib/data/bench-shop'
import { castingPicks, type CastingPick } from '@/lib/data/castings-read'
import { db } from '@/lib/data/db'
import type { Paged } from '@/lib/data/paging'
import { currentSettings } from '@/lib/data/settings'
import { shopOf } from '@/lib/data/shop'
import type { PricePick } from '@/lib/core/money/price-pick'
import { taxPicks, type TaxPick } from '@/lib/data/tax-rates'
import { pricePicks } from '@/lib/data/price-picks'

export type BookingView = {
  readonly castings: Paged<CastingPick>
  readonly currency: string
  readonly currencyExponent: number
  /** What a price line can be taken from. */
  readonly priceList: Paged<PricePick>
  readonly taxes: readonly TaxPick[]
  readonly locale: string
  readonly timeZone: string
  readonly today: string
  /** By which the work is named and offered. */
  readonly rules: RouteRules
  /** For the cut bench inside the form. */
  readonly bench: BenchShop
}

/** What a booking chooses from. */
export async function seeBooking(actor: Actor, input: { now: Date }): Promise<BookingView> {
  must(allow(actor, 'job.book'))
  const client = await db()
  const shop = await shopOf(client)
  const { values: settings } = await currentSettings(client)
  return {
    castings: await castingPicks(client),
    currency: shop.currency,
    currencyExponent: shop.currencyExponent,
    priceList: await pricePicks(client, shop),
    taxes: await taxPicks(client),
    locale: shop.locale,
    timeZone: shop.timeZone,
    rules: settings.rules,
    bench: await benchShop(client, { settings, timeZone: shop.timeZone }, true),
    today: dayIn(shop.timeZone, input.now),
  }
}
