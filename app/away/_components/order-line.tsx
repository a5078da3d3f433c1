import Link from 'next/link'
import { Tag } from '@/app/_components/tag/tag'
import { Day } from '@/app/_components/ui/day'
import { Sign } from '@/app/_components/ui/sign'
import type { AwayOrder } from '@/lib/use-cases/outside/see-away'

const days = (count: number): string => `${count} ${count === 1 ? 'day' : 'days'}`

/** One order: what is out, how long, whether it is late and which promise it holds up. */
export function OrderLine({ order, locale }: { order: AwayOrder; locale: string }) {
  return (
    <li className="stack">
      <div className="row spread">
        <strong>
          <Link href={`/away/${order.orderId}`}>{order.number}</Link>
        </strong>
        <span>
          out {days(order.daysOut)}, since <Day on={order.sentOn} locale={locale} />
        </span>
        <span>
          {order.daysLate > 0 ? (
            <>
              <Sign kind="caution" /> late by {days(order.daysLate)}
            </>
          ) : order.promisedOn ? (
            <>
              promised <Day on={order.promisedOn} locale={locale} />
            </>
          ) : (
            'no promise given'
          )}
        </span>
      </div>
      <div className="row">
        {order.heads.map((head) => (
          <span key={head.visitId} className="row">
            <Tag number={head.tag} size="s" href={`/heads/${head.headId}`} />
            {head.back && <span className="soft">back</span>}
          </span>
        ))}
        {order.holdsUp && (
          <span className="soft">
            holds up the promise of <Day on={order.holdsUp} locale={locale} />
          </span>
        )}
      </div>
    </li>
  )
}
