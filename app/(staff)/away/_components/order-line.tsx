import { Link } from '@/app/_components/ui/link'
import { Tag } from '@/app/_components/tag/tag'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Day } from '@/app/_components/ui/day'
import { daysText } from '@/lib/core/shop/when-words'
import { Sign } from '@/app/_components/ui/sign'
import type { AwayOrder } from '@/lib/use-cases/outside/see-away'
import { PromiseState } from './order-parts'

/** One order: what is out, how long, whether it is late and which promise it holds up. */
export function OrderLine({
  order,
  locale,
  withVendor = false,
}: {
  order: AwayOrder
  locale: string
  withVendor?: boolean
}) {
  return (
    <li className="stack">
      <div className="row spread">
        <span>
          <strong>
            <Link href={`/away/${order.orderId}`}>{order.number}</Link>
          </strong>
          {withVendor && `, ${order.vendor}`}
          {order.redo && ', rework'}
        </span>
        <span>
          out {daysText(order.daysOut)}, since <Day on={order.sentOn} locale={locale} />
        </span>
        <span>
          <PromiseState order={order} locale={locale} />
          {!order.accepted && ', not accepted yet'}
        </span>
        <ButtonLink href={`/api/papers/outside-sheet/${order.orderId}`} target="_blank">
          Outside sheet of {order.number}
        </ButtonLink>
      </div>
      <div className="row">
        {order.heads.map((head) => (
          <span key={head.visitId} className="row">
            <Tag number={head.tag} size="s" href={`/heads/${head.headId}`} />
            {head.back && <span className="soft">back</span>}
          </span>
        ))}
        {order.holdsUp && <HoldsUp order={order} on={order.holdsUp} locale={locale} />}
      </div>
    </li>
  )
}

function HoldsUp({ order, on, locale }: { order: AwayOrder; on: string; locale: string }) {
  const slack = order.slackDays
  return (
    <span className="soft">
      {slack !== null && slack < 0 && (
        <>
          <Sign kind="caution" />{' '}
        </>
      )}
      holds up the customer promise of <Day on={on} locale={locale} />
      {slack !== null && slack > 0 && `, ${daysText(slack)} to spare`}
      {slack === 0 && ', no day to spare'}
      {slack !== null && slack < 0 && <strong>, at risk: ready up to {daysText(-slack)} after it</strong>}
    </span>
  )
}
