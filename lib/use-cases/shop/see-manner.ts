import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { db } from '@/lib/data/db'
import { shopOf } from '@/lib/data/shop'

export type Manner = {
  readonly zone: string
  readonly locale: string
  readonly currency: string
  readonly currencyExponent: number
}

/** How this shop writes dates and money. */
export async function seeManner(actor: Actor): Promise<Manner> {
  must(allow(actor, 'job.see'))
  const { timeZone: zone, locale, currency, currencyExponent } = await shopOf(await db())
  return { zone, locale, currency, currencyExponent }
}
