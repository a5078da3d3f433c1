import { Link } from '@/app/_components/ui/link'
import { Day } from '@/app/_components/ui/day'
import { daysText } from '@/lib/core/shop/when-words'
import type { SupplyView } from '@/lib/use-cases/supply/see-supply'
import { PromiseState } from './order-parts'

/** One supply order in a line or two: since when, promised or late, what is on it and for whom, what it holds up. */
export function SupplyLine({ order, locale, from = false }: { order: SupplyView; locale: string; from?: boolean }) {
  return (
    <li className="stack">
      <div className="row spread">
        <strong>
          <Link href={`/away/supply/${order.orderId}`}>{order.number}</Link>
          {from && ` from ${order.vendor}`}
        </strong>
        {order.open ? (
          <span>ordered {order.daysOut === 0 ? 'today' : `${daysText(order.daysOut)} ago`}</span>
        ) : (
          <span>{order.endReason === '' ? 'all received' : 'remainder cancelled'}</span>
        )}
        {order.open && (
          <span>
            <PromiseState order={order} locale={locale} />
          </span>
        )}
      </div>
      <div>
        {order.lines.map((line) => (
          <p key={line.lineId}>
            {line.quantity} × {line.what}
            {line.arrived > 0 && `, ${line.arrived} of ${line.quantity} received`}
            {line.for.length > 0 && ` for ${line.for.map(whom).join(', ')}`}
          </p>
        ))}
        {order.holdsUp && (
          <p className="soft">
            holds up the customer promise of <Day on={order.holdsUp} locale={locale} />
          </p>
        )}
      </div>
    </li>
  )
}

const whom = ({ tag, pulled }: SupplyView['lines'][number]['for'][number]): string =>
  pulled ? `${tag} (removed from its job)` : tag
