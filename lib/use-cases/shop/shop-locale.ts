import { db } from '@/lib/data/db'
import { shopOf } from '@/lib/data/shop'

export type ShopLocale = {
  readonly name: string
  readonly timeZone: string
  readonly locale: string
  readonly currency: string
  readonly currencyExponent: number
  readonly paper: 'letter' | 'a4'
}

/** How this shop writes times, figures and money. */
export async function shopLocale(): Promise<ShopLocale> {
  const { name, timeZone, locale, currency, currencyExponent, paper } = await shopOf(await db())
  return { name, timeZone, locale, currency, currencyExponent, paper: paper === 'letter' ? 'letter' : 'a4' }
}
