import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { db } from '@/lib/data/db'
import { orderById } from '@/lib/data/outside'

/** One outside order with its heads, promises and what came back. Cost stays with those who may see it. */
export async function seeOrder(actor: Actor, orderId: string) {
  must(allow(actor, 'outside.see'))
  const order = await orderById(await db(), orderId)
  if (!order) throw new RefusedError({ code: 'not-found', message: 'There is no such outside order.' })
  const { costMinor: _cost, ...rest } = order
  return rest
}
