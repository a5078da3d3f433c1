import Link from 'next/link'
import { AutoRefresh } from '@/app/_components/auto-refresh'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { seeAway, type Away } from '@/lib/use-cases/outside/see-away'
import { requirePerson } from '@/lib/web/require-actor'
import { Boxes } from './_components/boxes'
import { CallList } from './_components/call-list'
import { OrderLine } from './_components/order-line'
import { OutPicture } from './_components/out-picture'
import { SupplyPart } from './_components/supply-part'
import { PartsList } from './_components/parts-list'
import { VendorPart } from './_components/vendor-part'

export const metadata = { title: 'Away' }

type Props = { searchParams: Promise<{ by?: string | string[] }> }

export default async function AwayPage({ searchParams }: Props) {
  const promised = (await searchParams).by === 'promise'
  const actor = await requirePerson('outside.see')
  const [away, newest] = await Promise.all([seeAway(actor, new Date()), newestChange()])
  return (
    <>
      <AutoRefresh newest={newest} />
      <h1>Away</h1>
      {away.vendors.length === 0 ? (
        <EmptyState title="Nothing is out at a vendor.">
          <p>
            A head goes out from its own page or from the list below, when its angle cut or other outside work is ready.
          </p>
        </EmptyState>
      ) : (
        <>
          <nav className="row" aria-label="What is out, sorted">
            <Way href="/away" chosen={!promised}>
              By vendor
            </Way>
            <Way href="/away?by=promise" chosen={promised}>
              By what it holds up
            </Way>
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
    </>
  )
}

function Way({ href, chosen, children }: { href: string; chosen: boolean; children: string }) {
  return chosen ? <strong aria-current="page">{children}</strong> : <Link href={href}>{children}</Link>
}

function ByPromise({ away }: { away: Away }) {
  return (
    <section className="stack part" aria-label="By what it holds up">
      <h2>By what it holds up</h2>
      <OutPicture title="Out now, by what it holds up" orders={away.byPromise} withVendor />
      <ul className="plain-list">
        {away.byPromise.map((order) => (
          <OrderLine key={order.orderId} order={order} locale={away.locale} withVendor />
        ))}
      </ul>
    </section>
  )
}
