import { allow, can } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { dayIn } from '@/lib/core/shop/calendar'
import { headName } from '@/lib/core/shop/tag-number'
import { db } from '@/lib/data/db'
import { shopOf } from '@/lib/data/shop'
import { headsToOrder, supplyOfJob, waitsToOrder } from '@/lib/data/supply'
import { supplyView, type SupplyView } from './supply-view'

export type JobSupply = {
  readonly orders: readonly SupplyView[]
  /** Heads on order, and parts waited for, that no supply order brings. */
  readonly toOrder: readonly string[]
  readonly mayOrder: boolean
}

/** What is bought for a job, and what somebody still has to order. */
export async function seeJobSupply(actor: Actor, jobId: string, now: Date): Promise<JobSupply> {
  must(allow(actor, 'job.see'))
  const client = await db()
  const { timeZone } = await shopOf(client)
  const [orders, heads, waits] = await Promise.all([
    supplyOfJob(client, jobId),
    headsToOrder(client, jobId),
    waitsToOrder(client, jobId),
  ])
  const today = dayIn(timeZone, now)
  return {
    orders: orders.map((order) => supplyView(order, { today, timeZone, withCost: false })),
    toOrder: [
      ...heads.map(({ head, job, position }) => headName(head.tags, job.number, position)),
      ...waits.map(({ what, visit }) => `${what} for ${headName(visit.head.tags, visit.job.number, visit.position)}`),
    ],
    mayOrder: can(actor, 'supply.order'),
  }
}
