import { Frame } from '@/app/_components/frame'
import { Live } from '@/app/_components/live'
import { Tag } from '@/app/_components/tag/tag'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Day } from '@/app/_components/ui/day'
import { When } from '@/app/_components/ui/when'
import { stepLabels } from '@/lib/core/route/steps'
import type { StepId } from '@/lib/core/route/types'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { shopManner } from '@/lib/use-cases/shop/shop-manner'
import { seeOrder } from '@/lib/use-cases/outside/see-order'
import { seen } from '@/lib/web/page-refusals'
import { requirePerson } from '@/lib/web/require-actor'
import { ReceiveForm } from './receive-form'
import { RepromiseForm } from './repromise-form'

export const metadata = { title: 'Outside order' }

type Props = { params: Promise<{ order: string }> }

export default async function OrderPage({ params }: Props) {
  const { order: orderId } = await params
  const actor = await requirePerson('outside.see', `/away/${orderId}`)
  const [order, newest, shop] = await Promise.all([
    seen(seeOrder(actor, orderId)),
    newestChange(),
    shopManner(),
  ])
  const scope = order.scope.split(',').filter(Boolean) as StepId[]
  const out = order.visits.filter((line) => line.receivedAt === null)
  return (
    <Frame place="away" actor={actor}>
      <Live newest={newest} />
      <h1>
        {order.number} to {order.vendor.name}
      </h1>
      <p>
        {scope.map((step) => stepLabels[step]).join(', ')}
        {order.finishesToSize && '; the vendor finishes to size'}.{' '}
        {order.sentAt && (
          <>
            Sent <When at={order.sentAt} zone={shop.timeZone} locale={shop.locale} style="date" />
          </>
        )}
        {order.promisedOn && (
          <>
            , promised back <Day on={order.promisedOn} locale={shop.locale} />
          </>
        )}
        .
      </p>
      {order.instructions !== '' && <p>{order.instructions}</p>}
      <ButtonLink href={`/api/papers/outside-sheet/${order.id}`}>Outside sheet (PDF)</ButtonLink>
      <section className="stack part" aria-label="Heads">
        <h2>Heads</h2>
        <ul className="plain-list">
          {order.visits.map((line) => (
            <li key={line.id} className="row spread">
              <Tag number={line.visit.head.tags[0]?.number ?? ''} href={`/heads/${line.visit.headId}`} />
              <span>
                {line.angleIn > 0 && `angle part ${line.angleIn.toFixed(3)} in `}
                {line.flatIn > 0 && `flat part ${line.flatIn.toFixed(3)} in`}
              </span>
              <span>
                {line.receivedAt ? (
                  <>
                    back <When at={line.receivedAt} zone={shop.timeZone} locale={shop.locale} style="date" />
                  </>
                ) : (
                  'still out'
                )}
              </span>
              {line.marksTyped !== '' && (
                <span>
                  marked “{line.marksTyped}”{line.marksRead !== '' && `, read as ${line.marksRead}`}
                </span>
              )}
            </li>
          ))}
        </ul>
      </section>
      {out.length > 0 && (
        <ReceiveForm
          orderId={order.id}
          scope={scope.map((id) => ({ id, label: stepLabels[id] }))}
          heads={out.map((line) => ({ visitId: line.visitId, tag: line.visit.head.tags[0]?.number ?? '' }))}
        />
      )}
      {out.length > 0 && <RepromiseForm orderId={order.id} version={order.version} />}
      {order.promises.length > 0 && (
        <section className="stack part" aria-label="Promises">
          <h2>What the vendor promised</h2>
          <ol>
            {order.promises.map((promise) => (
              <li key={promise.id}>
                <Day on={promise.promisedOn} locale={shop.locale} />{' '}
                {promise.note !== '' && `(${promise.note})`}
              </li>
            ))}
          </ol>
        </section>
      )}
    </Frame>
  )
}
