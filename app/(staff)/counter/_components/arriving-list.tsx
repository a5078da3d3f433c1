import { SupplyLine } from '@/app/(staff)/away/_components/supply-line'
import { EmptyState } from '@/app/_components/ui/empty-state'
import type { SupplyView } from '@/lib/use-cases/supply/see-supply'

/** Supply orders that should come today, and those that should have come. */
export function ArrivingList({ orders, locale }: { orders: readonly SupplyView[]; locale: string }) {
  return (
    <section className="part" aria-label="Supply orders arriving">
      <h2>Supply orders arriving {orders.length > 0 && <span className="soft">{orders.length}</span>}</h2>
      {orders.length === 0 ? (
        <EmptyState title="Nothing should come today">
          <p>What is bought stands here on the day it is promised, and from then until it comes.</p>
        </EmptyState>
      ) : (
        <ul className="plain-list">
          {orders.map((order) => (
            <SupplyLine key={order.orderId} order={order} locale={locale} from />
          ))}
        </ul>
      )}
    </section>
  )
}
