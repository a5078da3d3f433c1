import type { FromVendor } from '@/lib/core/route/why-waiting'
import type { SupplyToShow } from '@/lib/data/supply'
import type { SupplyView } from '@/lib/data/supply-view'
import type { Dossier } from '@/lib/dossier/dossier'
import { whereaboutsOf } from '@/lib/dossier/whereabouts-of'

export type JobSupply = {
  readonly orders: readonly SupplyView[]
  /** Heads on order, and parts waited for, that no supply order brings. */
  readonly toOrder: readonly string[]
}

/** Lines that still bring something: of orders that were not ended. */
const stillComing = (orders: readonly SupplyToShow[]) =>
  orders.flatMap((order) => (order.endedAt === null ? order.lines.map((line) => ({ ...line, order })) : []))

/** Who sends a head that has not come. */
export function supplyByVisit(orders: readonly SupplyToShow[]): (visitId: string) => readonly FromVendor[] {
  const lines = stillComing(orders)
  return (visitId) =>
    lines.flatMap(({ heads, order }) =>
      heads.some(({ visit, arrivedAt }) => visit.id === visitId && arrivedAt === null)
        ? [{ vendor: order.vendor.name, promisedOn: order.promisedOn }]
        : [],
    )
}

const left = ['released', 'handed over', 'returned as is', 'scrapped', 'taken off']

/** What somebody still has to order: heads first, then parts, the longest awaited first. */
export function toOrder(heads: readonly Dossier[], orders: readonly SupplyToShow[]): readonly string[] {
  const lines = stillComing(orders)
  const isBought = (visitId: string) => lines.some((line) => line.heads.some(({ visit }) => visit.id === visitId))
  const open = heads
    .filter((head) => !left.includes(whereaboutsOf(head)))
    .flatMap(({ visit, label }) => visit.waits.map((wait) => ({ ...wait, label })))
    .filter(({ id, arrivedAt }) => arrivedAt === null && !lines.some(({ waitId }) => waitId === id))
  return [
    ...heads.filter((head) => whereaboutsOf(head) === 'on order' && !isBought(head.visit.id)).map(({ label }) => label),
    ...open
      .sort((a, b) => a.openedAt.getTime() - b.openedAt.getTime())
      .map(({ what, label }) => `${what} for ${label}`),
  ]
}
