import { Link } from '@/app/_components/ui/link'
import { notFound } from 'next/navigation'
import { cache } from 'react'
import { z } from 'zod'
import { AutoRefresh } from '@/app/_components/auto-refresh'
import { Tag } from '@/app/_components/tag/tag'
import { labelsHref } from '@/app/_components/papers/labels-href'
import { PaperLink } from '@/app/_components/papers/paper-link'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Day } from '@/app/_components/ui/day'
import { Money } from '@/app/_components/ui/money'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { shopLocale, type ShopLocale } from '@/lib/use-cases/shop/shop-locale'
import { seeSupply, type SupplyPage } from '@/lib/use-cases/supply/see-supply'
import type { SupplyLineView } from '@/lib/use-cases/supply/see-supply'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'
import { OrderHeading, Promises, PromiseState } from '../../_components/order-parts'
import { RepromiseForm } from '../../_components/promise-forms'
import { EndForm } from './end-form'
import { ReceiveForm } from './receive-form'

type Props = { params: Promise<{ order: string }> }

const see = cache(async (id: string) => {
  if (!z.uuid().safeParse(id).success) notFound()
  const actor = await requirePerson('outside.see')
  const newest = await newestChange()
  return { newest, order: await orNotFound(seeSupply(actor, id, new Date())) }
})

export async function generateMetadata({ params }: Props) {
  const { order } = await see((await params).order)
  return { title: `${order.number} from ${order.vendor}` }
}

export default async function SupplyOrderPage({ params }: Props) {
  const { newest, order } = await see((await params).order)
  const manner = await shopLocale()
  const change = { orderId: order.orderId, version: order.version }
  return (
    <>
      <AutoRefresh newest={newest} />
      <OrderHeading title={`${order.number} from ${order.vendor}`} phone={order.phone} />
      <State order={order} locale={manner.locale} />
      {order.note !== '' && <p>{order.note}</p>}
      <section className="stack part" aria-label="Items">
        <h2>Items</h2>
        <ul className="plain-list">
          {order.lines.map((line) => (
            <Line key={line.lineId} line={line} manner={manner} />
          ))}
        </ul>
        <Labels order={order} />
      </section>
      {order.open && order.may.receive && <ReceiveForm key={order.version} order={order} />}
      {order.open && order.may.order && (
        <>
          <RepromiseForm key={`promise ${order.version}`} kind="supply" {...change} />
          <EndForm key={`end ${order.version}`} {...change} />
        </>
      )}
      <Promises promises={order.promises} locale={manner.locale} />
    </>
  )
}

function State({ order, locale }: { order: SupplyPage; locale: string }) {
  return (
    <p>
      Ordered <Day on={order.orderedOn} locale={locale} />
      {order.jobNumber && (
        <>
          {' '}
          for job <Link href={`/jobs/${order.jobNumber}`}>{order.jobNumber}</Link>
        </>
      )}
      {order.open && (
        <>
          , <PromiseState order={order} locale={locale} />
        </>
      )}
      {!order.open && (order.endReason === '' ? ': all received' : `: remainder cancelled (${order.endReason})`)}.
      {order.holdsUp && (
        <>
          {' '}
          Holds up the customer promise of <Day on={order.holdsUp} locale={locale} />.
        </>
      )}
    </p>
  )
}

function Line({ line, manner }: { line: SupplyLineView; manner: ShopLocale }) {
  return (
    <li className="stack">
      <div className="row spread">
        <span>
          <strong>
            {line.quantity} × {line.what}
          </strong>
          {line.nominal !== '' && <span className="soft"> {line.nominal}, not measured</span>}
        </span>
        {line.costMinor !== undefined && line.costMinor !== null && (
          <span>
            <Money minor={line.costMinor} currency={manner.currency} locale={manner.locale} /> each
          </span>
        )}
        <span>{line.arrived === 0 ? 'not received' : `${line.arrived} of ${line.quantity} received`}</span>
      </div>
      {line.for.length > 0 && (
        <div className="row">
          {line.for.map((head) => (
            <span key={head.visitId} className="row">
              <Tag number={head.tag} size="s" href={`/heads/${head.headId}`} />
              {head.pulled && <span>removed from job {head.jobNumber}: kept for stock</span>}
            </span>
          ))}
        </div>
      )}
    </li>
  )
}

/** Labels of the tags assigned here: a job at a time, or several jobs together. */
function Labels({ order }: { order: SupplyPage }) {
  const here = order.lines.flatMap((line) => (line.kind === 'head' ? line.for.filter((head) => head.here) : []))
  const jobs = [...new Set(here.map((head) => head.jobNumber))]
  if (jobs.length === 0) return null
  return (
    <div className="row">
      {jobs.map((number) => (
        <PaperLink
          key={number}
          href={`/api/papers/tag-labels/${number}`}
          pages={here.filter((head) => head.jobNumber === number).length}
        >
          {`Tag labels of job ${number}`}
        </PaperLink>
      ))}
      {jobs.length > 1 && (
        <ButtonLink href={labelsHref(here.map((head) => head.tag))}>Tag labels of these jobs together</ButtonLink>
      )}
    </div>
  )
}
