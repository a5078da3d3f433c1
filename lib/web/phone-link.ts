import 'server-only'
import { cache } from 'react'
import { phoneCountry } from '@/lib/core/shop/country'
import { db } from '@/lib/data/db'
import { dialled } from '@/lib/data/phone'
import { shopOf } from '@/lib/data/shop'

/** Read once a page. */
const countryHere = cache(async () => phoneCountry(await shopOf(await db())))

/** The address that dials the number in this text and nothing else of it; null: there is none to dial. */
export async function phoneLink(text: string): Promise<string | null> {
  const number = dialled(text, await countryHere())
  return number === '' ? null : `tel:${number}`
}
