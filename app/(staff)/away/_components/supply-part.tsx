import { Tag } from '@/app/_components/tag/tag'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Phone } from '@/app/_components/ui/phone'
import type { Away } from '@/lib/use-cases/outside/see-away'
import { SupplyLine } from './supply-line'

/** What the shop buys and has not got: by supplier, and the heads that nobody has ordered yet. */
export function SupplyPart({ away, locale }: { away: Away; locale: string }) {
  const { suppliers, toOrder, mayOrder } = away
  return (
    <section className="stack part" aria-label="On order">
      <div className="row spread">
        <h2>On order</h2>
        {mayOrder && <ButtonLink href="/away/supply/new">Order heads or parts</ButtonLink>}
      </div>
      {suppliers.length === 0 && <p className="soft">Nothing on order.</p>}
      {suppliers.map((supplier) => (
        <section key={supplier.name} className="stack" aria-label={`On order from ${supplier.name}`}>
          <div className="row spread">
            <h3>{supplier.name}</h3>
            <Phone number={supplier.phone} />
          </div>
          <ul className="plain-list">
            {supplier.orders.map((order) => (
              <SupplyLine key={order.orderId} order={order} locale={locale} />
            ))}
          </ul>
        </section>
      ))}
      {toOrder.length > 0 && (
        <section className="stack" aria-label="Not ordered yet">
          <h3>Not ordered yet</h3>
          <ul className="plain-list">
            {[...new Set(toOrder.map((head) => head.jobNumber))].map((number) => (
              <li key={number} className="row spread">
                <span className="row">
                  {toOrder
                    .filter((head) => head.jobNumber === number)
                    .map((head) => (
                      <Tag key={head.visitId} number={head.tag} size="s" href={`/heads/${head.headId}`} />
                    ))}
                </span>
                {mayOrder && <ButtonLink href={`/away/supply/new?job=${number}`}>Order for {number}</ButtonLink>}
              </li>
            ))}
          </ul>
        </section>
      )}
    </section>
  )
}
