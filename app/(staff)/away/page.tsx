import { Link } from '@/app/_components/ui/link'
import { Suspense } from 'react'
import { AutoRefresh } from '@/app/_components/auto-refresh'
import { Pager } from '@/app/_components/ui/pager'
import { Loading } from '@/app/_components/ui/loading'
import type { Actor } from '@/lib/core/access/roles'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { seeAway, type Away } from '@/lib/use-cases/outside/see-away'
import { pageOf } from '@/lib/web/page-of'
import { requirePerson } from '@/lib/web/require-actor'
import { Boxes } from './_components/boxes'
import { CallList } from './_components/call-list'
import { OrderLine } from './_components/order-line'
import { OutPicture } from './_components/out-picture'
import { SupplyPart } from './_components/supply-part'
import { PartsList } from './_components/parts-list'
import { VendorPart } from './_components/vendor-part'

export const metadata = { title: 'Away' }

type Props = { searchParams: Promise<{ by?: string | string[]; page?: string | string[] }> }

export default async function AwayPage({ searchParams }: Props) {
  const asked = await searchParams
  const promised = asked.by === 'promise'
  const actor = await requirePerson('outside.see')
  return (
    <>
      <h1>Away</h1>
      <Suspense fallback={<Loading />}>
        <WhatIsAway actor={actor} promised={promised} page={pageOf(asked.page)} />
      </Suspense>
    </>
  )
}

type Asked = { actor: Actor; promised: boolean; page: number }

async function WhatIsAway({ actor, promised, page }: Asked) {
  const newest = await newestChange()
  const away = await seeAway(actor, new Date(), page)
  return (
    <>
      <AutoRefresh newest={newest} />
      {away.vendors.length === 0 ? (
        <p className="soft">No heads at vendors. Send a head from its page or from the list below.</p>
      ) : (
        <>
          <nav className="row" aria-label="Sorted by">
            <SortLink href="/away" chosen={!promised}>
              By vendor
            </SortLink>
            <SortLink href="/away?by=promise" chosen={promised}>
              By customer promise
            </SortLink>
          </nav>
          <CallList calls={away.calls} />
          {promised ? (
            <ByPromise away={away} />
          ) : (
            away.vendors.map((vendor) => <VendorPart key={vendor.vendorId} vendor={vendor} locale={away.locale} />)
          )}
        </>
      )}
      <Boxes boxes={away.boxes} />
      <SupplyPart away={away} locale={away.locale} />
      <PartsList lines={away.parts} locale={away.locale} />
      <Pager page={page} more={away.more} href={(to) => `/away?${promised ? 'by=promise&' : ''}page=${to}`} />
    </>
  )
}

function SortLink({ href, chosen, children }: { href: string; chosen: boolean; children: string }) {
  return chosen ? <strong aria-current="page">{children}</strong> : <Link href={href}>{children}</Link>
}

function ByPromise({ away }: { away: Away }) {
  return (
    <section className="stack part" aria-label="By customer promise">
      <h2>By customer promise</h2>
      <OutPicture title="At vendors now, by customer promise" orders={away.byPromise} withVendor />
      <ul className="plain-list">
        {away.byPromise.map((order) => (
          <OrderLine key={order.orderId} order={order} locale={away.locale} withVendor />
        ))}
      </ul>
    </section>
  )
}
