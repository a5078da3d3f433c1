import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { Reader } from './db'

export async function shopOf(reader: Reader) {
  const shop = await reader.shop.findUnique({ where: { id: 1 } })
  if (!shop) throw new RefusedError({ code: 'wrong-state', message: 'This shop has not been set up yet.' })
  return shop
}
