import Link from 'next/link'
import { Frame } from '@/app/_components/frame'
import { Live } from '@/app/_components/live'
import { Tag } from '@/app/_components/tag/tag'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { seeAway, type AwayVendor, type ToSend } from '@/lib/use-cases/outside/see-away'
import { shopManner } from '@/lib/use-cases/shop/shop-manner'
import { requirePerson } from '@/lib/web/require-actor'
import { OrderLine } from './_components/order-line'
import { SupplyPart } from './_components/supply-part'
import { PartsList } from './_components/parts-list'

export const metadata = { title: 'Away' }

export default async function AwayPage() {
  const actor = await requirePerson('outside.see', '/away')
  const [away, newest, { locale }] = await Promise.all([
    seeAway(actor, new Date()),
    newestChange(),
    shopManner(),
  ])
  return (
    <Frame place="away" actor={actor}>
      <Live newest={newest} />
      <h1>Away</h1>
      {away.vendors.length === 0 && (
        <EmptyState title="Nothing is out at a vendor.">
          <p>
            A head goes out from its own page or from the list below, when its angle cut or other outside work
            is ready.
          </p>
        </EmptyState>
      )}
      {away.vendors.map((vendor) => (
        <Vendor key={vendor.vendorId} vendor={vendor} locale={locale} />
      ))}
      <ReadyToSend lines={away.toSend} />
      <SupplyPart away={away} locale={locale} />
      <PartsList lines={away.parts} locale={locale} />
    </Frame>
  )
}

function Vendor({ vendor, locale }: { vendor: AwayVendor; locale: string }) {
  const took = vendor.turnaround
  return (
    <section className="stack part" aria-label={vendor.name}>
      <div className="row spread">
        <h2>{vendor.name}</h2>
        {vendor.phone !== '' && <a href={`tel:${vendor.phone.replace(/[^+\d]/g, '')}`}>{vendor.phone}</a>}
      </div>
      <p className="soft">
        {took
          ? `Usually ${took.medianDays} days, nine of ten within ${took.nineOfTenDays} (${took.count} heads so far).`
          : 'Nothing has come back from here yet, so there is no turnaround to go by.'}
      </p>
      <ul className="plain-list">
        {vendor.orders.map((order) => (
          <OrderLine key={order.orderId} order={order} locale={locale} />
        ))}
      </ul>
    </section>
  )
}

function ReadyToSend({ lines }: { lines: readonly ToSend[] }) {
  return (
    <section className="stack part" aria-label="Ready to send">
      <h2>Ready to send</h2>
      {lines.length === 0 ? (
        <p className="soft">No head waits to go out.</p>
      ) : (
        <ul className="plain-list">
          {lines.map((line) => (
            <li key={line.head.visitId + line.step} className="row spread">
              <span className="row">
                <Tag number={line.head.tag} href={`/heads/${line.head.headId}`} />
                <span>
                  {line.step}, job <Link href={`/jobs/${line.head.jobNumber}`}>{line.head.jobNumber}</Link>
                </span>
              </span>
              <ButtonLink href={`/away/send?head=${line.head.visitId}`}>Send {line.head.tag}</ButtonLink>
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}
