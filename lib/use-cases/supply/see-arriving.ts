import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { dayIn } from '@/lib/core/shop/calendar'
import { db } from '@/lib/data/db'
import { shopOf } from '@/lib/data/shop'
import { supplyOut } from '@/lib/data/away-list'
import type { Paged } from '@/lib/data/paging'
import { supplyView, type SupplyView } from '@/lib/data/supply-view'

/** Supply orders promised for today, and those that are late, the latest first. */
export async function seeArriving(actor: Actor, now: Date, page = 1): Promise<Paged<SupplyView>> {
  must(allow(actor, 'job.see'))
  const client = await db()
  const { timeZone } = await shopOf(client)
  const today = dayIn(timeZone, now)
  const { rows, more } = await supplyOut(client, page, today)
  const shown = rows.toSorted(byPromise).map((order) => supplyView(order, { today, timeZone, withCost: false }))
  return { rows: shown, more }
}

const byPromise = (a: { promisedOn: string | null }, b: { promisedOn: string | null }): number =>
  (a.promisedOn ?? '').localeCompare(b.promisedOn ?? '')
