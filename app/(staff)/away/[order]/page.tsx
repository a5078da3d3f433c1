import { Link } from '@/app/_components/ui/link'
import { notFound } from 'next/navigation'
import { cache } from 'react'
import { z } from 'zod'
import { AutoRefresh } from '@/app/_components/auto-refresh'
import { OrderPhotos } from '@/app/_components/photo/order-photos'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Day } from '@/app/_components/ui/day'
import { Money } from '@/app/_components/ui/money'
import { When } from '@/app/_components/ui/when'
import { formatAmount } from '@/lib/core/money/amount'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { shopLocale, type ShopLocale } from '@/lib/use-cases/shop/shop-locale'
import { seeOrder, type OrderPage } from '@/lib/use-cases/outside/see-order'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'
import { atWhoseCost } from '../_components/payer'
import { CostForm, FreightForm } from './freight-forms'
import { OrderHeadLine } from './order-head'
import { ReceiveForm } from './receive-form'
import { OrderHeading, Promises } from '../_components/order-parts'
import { AcceptForm, RepromiseForm } from '../_components/promise-forms'

type Props = { params: Promise<{ order: string }> }

const see = cache(async (id: string) => {
  if (!z.uuid().safeParse(id).success) notFound()
  const actor = await requirePerson('outside.see')
  const newest = await newestChange()
  return { actor, newest, order: await orNotFound(seeOrder(actor, id)) }
})

export async function generateMetadata({ params }: Props) {
  const { order } = await see((await params).order)
  return { title: `${order.number} to ${order.vendor.name}` }
}

export default async function OutsideOrderPage({ params }: Props) {
  const { actor, newest, order } = await see((await params).order)
  const manner = await shopLocale()
  const out = order.heads.filter((head) => head.receivedAt === null)
  const change = { orderId: order.orderId, version: order.version }
  return (
    <>
      <AutoRefresh newest={newest} />
      <OrderHeading title={`${order.number} to ${order.vendor.name}`} phone={order.vendor.phone} />
      <State order={order} manner={manner} />
      {order.instructions !== '' && <p>{order.instructions}</p>}
      <Travel order={order} manner={manner} />
      <div className="row">
        <ButtonLink href={`/api/papers/outside-sheet/${order.orderId}`} target="_blank">
          Outside sheet (PDF)
        </ButtonLink>
      </div>
      <section className="stack part" aria-label="Heads">
        <h2>Heads</h2>
        <ul className="plain-list">
          {order.heads.map((head) => (
            <OrderHeadLine key={head.visitId} order={order} head={head} manner={manner} />
          ))}
        </ul>
      </section>
      {out.length > 0 && order.may.receive && (
        <ReceiveForm
          key={out.map((head) => head.visitId).join()}
          orderId={order.orderId}
          scope={order.scope}
          heads={out.map(({ visitId, tag }) => ({ visitId, tag }))}
        />
      )}
      <OrderPhotos actor={actor} orderId={order.orderId} heads={order.heads} />
      {order.may.send && (
        <>
          {out.length > 0 && order.acceptedAt === null && <AcceptForm key={`a${order.version}`} {...change} />}
          {out.length > 0 && <RepromiseForm key={`p${order.version}`} kind="outside" {...change} />}
          <FreightForm
            {...change}
            number={order.number}
            freight={order.freight}
            tracking={order.tracking}
            returnTracking={order.returnTracking}
          />
        </>
      )}
      {order.cost && (
        <CostForm
          {...change}
          number={order.number}
          cost={typed(order.cost.workMinor, manner)}
          freightCost={typed(order.cost.freightMinor, manner)}
        />
      )}
      <Promises promises={order.promises} locale={manner.locale} />
    </>
  )
}

const typed = (minor: number | null, { currencyExponent }: ShopLocale): string =>
  minor === null ? '' : formatAmount(minor, currencyExponent)

function State({ order, manner }: { order: OrderPage; manner: ShopLocale }) {
  const on = { zone: manner.timeZone, locale: manner.locale, style: 'date' } as const
  return (
    <>
      {order.redoOf && (
        <p>
          <strong>Rework</strong> of <Link href={`/away/${order.redoOf.orderId}`}>{order.redoOf.number}</Link>,{' '}
          {atWhoseCost(order.redoOf.cost)}.
        </p>
      )}
      <p>
        {order.scope.map((step) => step.label).join(', ')}
        {order.finishesToSize && '; vendor finishes to size'}.{' '}
        {order.sentAt && (
          <>
            Sent <When at={order.sentAt} {...on} />
          </>
        )}
        {order.acceptedAt ? (
          <>
            , accepted <When at={order.acceptedAt} {...on} />
          </>
        ) : (
          ', not accepted yet'
        )}
        {order.promisedOn && (
          <>
            , promised <Day on={order.promisedOn} locale={manner.locale} />
          </>
        )}
        .
      </p>
    </>
  )
}

function Travel({ order, manner }: { order: OrderPage; manner: ShopLocale }) {
  const { cost } = order
  const said = [
    order.freight === '' ? '' : `Freight out: ${order.freight}`,
    order.tracking === '' ? '' : `tracking out ${order.tracking}`,
    order.returnTracking === '' ? '' : `tracking back ${order.returnTracking}`,
  ].filter(Boolean)
  const amount = (minor: number) => <Money minor={minor} currency={manner.currency} locale={manner.locale} />
  return (
    <>
      {said.length > 0 && <p>{said.join(', ')}.</p>}
      {cost && (cost.workMinor !== null || cost.freightMinor !== null) && (
        <p>
          {cost.workMinor !== null && <>Vendor’s work {amount(cost.workMinor)}</>}
          {cost.workMinor !== null && cost.freightMinor !== null && ', '}
          {cost.freightMinor !== null && (
            <>
              {cost.workMinor === null ? 'Freight' : 'freight'} {amount(cost.freightMinor)}
            </>
          )}
        </p>
      )}
    </>
  )
}
