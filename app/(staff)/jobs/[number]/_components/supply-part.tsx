import { SupplyLine } from '@/app/(staff)/away/_components/supply-line'
import { ButtonLink } from '@/app/_components/ui/button-link'
import type { JobView } from '@/lib/use-cases/jobs/see-job'

/** What is bought for this job, and what somebody has still to order. */
export function SupplyPart({ job }: { job: JobView }) {
  const { orders, toOrder, mayOrder } = job.supply
  if (orders.length + toOrder.length === 0) return null
  return (
    <section className="stack part" aria-label="Supply orders">
      <h2>Supply orders</h2>
      {toOrder.length > 0 && (
        <div className="row spread">
          <p>Not ordered yet: {toOrder.join(', ')}.</p>
          {mayOrder && <ButtonLink href={`/away/supply/new?job=${job.number}`}>Order heads or parts</ButtonLink>}
        </div>
      )}
      {orders.length > 0 && (
        <ul className="plain-list">
          {orders.map((order) => (
            <SupplyLine key={order.orderId} order={order} locale={job.locale} from />
          ))}
        </ul>
      )}
    </section>
  )
}
