import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { addDays, dayIn } from '@/lib/core/shop/calendar'
import { db } from '@/lib/data/db'
import { shopOf } from '@/lib/data/shop'

/** The days that the page begins with: all of last month. */
export async function seeBooks(actor: Actor, now: Date): Promise<{ readonly from: string; readonly to: string }> {
  must(allow(actor, 'bookkeeping.see'))
  const today = dayIn((await shopOf(await db())).timeZone, now)
  const to = addDays(`${today.slice(0, 7)}-01`, -1)
  return { from: `${to.slice(0, 7)}-01`, to }
}
