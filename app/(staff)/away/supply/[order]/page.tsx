import Link from 'next/link'
import { notFound } from 'next/navigation'
import { z } from 'zod'
import { AutoRefresh } from '@/app/_components/auto-refresh'
import { Tag } from '@/app/_components/tag/tag'
import { labelsHref } from '@/app/_components/papers/labels-href'
import { PaperLink } from '@/app/_components/papers/paper-link'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Day } from '@/app/_components/ui/day'
import { Money } from '@/app/_components/ui/money'
import { Phone } from '@/app/_components/ui/phone'
import { Sign } from '@/app/_components/ui/sign'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { shopLocale, type ShopLocale } from '@/lib/use-cases/shop/shop-locale'
import { seeSupply, type SupplyPage } from '@/lib/use-cases/supply/see-supply'
import type { SupplyLineView } from '@/lib/use-cases/supply/see-supply'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'
import { EndForm, RepromiseForm } from './change-order'
import { ReceiveForm } from './receive-form'

export const metadata = { title: 'Supply order' }

type Props = { params: Promise<{ order: string }> }

export default async function SupplyOrderPage({ params }: Props) {
  const id = z.uuid().safeParse((await params).order)
  if (!id.success) notFound()
  const actor = await requirePerson('outside.see')
  const [order, newest, manner] = await Promise.all([
    orNotFound(seeSupply(actor, id.data, new Date())),
    newestChange(),
    shopLocale(),
  ])
  const change = { orderId: order.orderId, version: order.version }
  return (
    <>
      <AutoRefresh newest={newest} />
      <div className="row spread">
        <h1>
          {order.number} from {order.vendor}
        </h1>
        <Phone number={order.phone} />
      </div>
      <State order={order} locale={manner.locale} />
      {order.note !== '' && <p>{order.note}</p>}
      <section className="stack part" aria-label="What is on it">
        <h2>What is on it</h2>
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
          <RepromiseForm key={`promise ${order.version}`} {...change} />
          <EndForm key={`end ${order.version}`} {...change} />
        </>
      )}
      {order.promises.length > 0 && (
        <section className="stack part" aria-label="Promises">
          <h2>What the supplier promised</h2>
          <ol>
            {order.promises.map((promise) => (
              <li key={promise.id}>
                <Day on={promise.on} locale={manner.locale} /> {promise.note !== '' && `(${promise.note})`}
              </li>
            ))}
          </ol>
        </section>
      )}
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
      {order.open && order.promisedOn && (
        <>
          , promised by <Day on={order.promisedOn} locale={locale} />
        </>
      )}
      {order.daysLate > 0 && (
        <>
          , <Sign kind="caution" /> late by {order.daysLate} {order.daysLate === 1 ? 'day' : 'days'}
        </>
      )}
      {!order.open &&
        (order.endReason === '' ? ': all of it is here' : `: the rest does not come (${order.endReason})`)}
      .
      {order.holdsUp && (
        <>
          {' '}
          It holds up the promise of <Day on={order.holdsUp} locale={locale} />.
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
            <Money minor={line.costMinor} currency={manner.currency} locale={manner.locale} /> a piece
          </span>
        )}
        <span>{line.arrived === 0 ? 'none here yet' : `${line.arrived} of ${line.quantity} here`}</span>
      </div>
      {line.for.length > 0 && (
        <div className="row">
          {line.for.map((head) => (
            <span key={head.visitId} className="row">
              <Tag number={head.tag} size="s" href={`/heads/${head.headId}`} />
              {head.pulled && <span>off its job {head.jobNumber}: it lies here for another</span>}
            </span>
          ))}
        </div>
      )}
    </li>
  )
}

/** Tags were hung here: their labels, a job at a time, or those of several jobs together. */
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
