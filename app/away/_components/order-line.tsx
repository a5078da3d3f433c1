import Link from 'next/link'
import { Tag } from '@/app/_components/tag/tag'
import { Sign } from '@/app/_components/ui/sign'
import type { AwayOrder } from '@/lib/use-cases/outside/see-away'

const days = (count: number): string => `${count} ${count === 1 ? 'day' : 'days'}`

/** One order: what is out, how long, whether it is late and which promise it holds up. */
export function OrderLine({ order }: { order: AwayOrder }) {
  return (
    <li className="stack">
      <div className="row spread">
        <strong>
          <Link href={`/away/${order.orderId}`}>{order.number}</Link>
        </strong>
        <span>
          out {days(order.daysOut)}, since {order.sentOn}
        </span>
        <span>
          {order.daysLate > 0 ? (
            <>
              <Sign kind="caution" /> late by {days(order.daysLate)}
            </>
          ) : order.promisedOn ? (
            `promised ${order.promisedOn}`
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
        <span className="soft">{order.holdsUp ? `holds up the promise of ${order.holdsUp}` : ''}</span>
      </div>
    </li>
  )
}
