import 'server-only'
import { headName } from '@/lib/core/shop/tag-number'
import type { Reader } from './db'
import { headsToOrder, supplyOfJob, waitsToOrder } from './supply'
import { supplyView, type SupplyView } from './supply-view'

export type JobSupply = {
  readonly orders: readonly SupplyView[]
  /** Heads on order, and parts waited for, that no supply order brings. */
  readonly toOrder: readonly string[]
}

/** What is bought for a job, and what somebody still has to order. */
export async function jobSupply(
  reader: Reader,
  jobId: string,
  { today, timeZone }: { readonly today: string; readonly timeZone: string },
): Promise<JobSupply> {
  const orders = await supplyOfJob(reader, jobId)
  const heads = await headsToOrder(reader, jobId)
  const waits = await waitsToOrder(reader, jobId)
  return {
    orders: orders.map((order) => supplyView(order, { today, timeZone, withCost: false })),
    toOrder: [
      ...heads.map(({ head, job, position }) => headName(head.tags, job.number, position)),
      ...waits.map(({ what, visit }) => `${what} for ${headName(visit.head.tags, visit.job.number, visit.position)}`),
    ],
  }
}
