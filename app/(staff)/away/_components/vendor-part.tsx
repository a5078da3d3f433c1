import { Phone } from '@/app/_components/ui/phone'
import { Table } from '@/app/_components/ui/table'
import { turnaroundStrip } from '@/lib/drawing/turnaround-strip'
import type { AwayVendor } from '@/lib/use-cases/outside/see-away'
import { OrderLine } from './order-line'
import { daysOf, OutPicture } from './out-picture'
import { TwoWidths } from './two-widths'

/** One vendor: how long they take, as words, picture and table, and what is there now. */
export function VendorPart({ vendor, locale }: { vendor: AwayVendor; locale: string }) {
  const took = vendor.turnaround
  // Both pictures on one scale: a day stands under the same day.
  const atLeastDays = Math.max(daysOf(vendor.orders), ...vendor.daysTaken)
  return (
    <section className="stack part" aria-label={vendor.name}>
      <div className="row spread">
        <h2>{vendor.name}</h2>
        <Phone number={vendor.phone} />
      </div>
      <p className="soft">
        {took
          ? `Usually back in ${took.medianDays} days; nine out of ten within ${took.nineOfTenDays} days (${took.count} ${took.count === 1 ? 'head' : 'heads'} so far).`
          : 'No head has come back from this vendor yet: turnaround not known.'}
      </p>
      {took && <Strip vendor={vendor} atLeastDays={atLeastDays} />}
      <h3>Out now</h3>
      <OutPicture title={`Out now at ${vendor.name}`} orders={vendor.orders} atLeastDays={atLeastDays} />
      <ul className="plain-list">
        {vendor.orders.map((order) => (
          <OrderLine key={order.orderId} order={order} locale={locale} />
        ))}
      </ul>
    </section>
  )
}

function Strip({ vendor, atLeastDays }: { vendor: AwayVendor; atLeastDays: number }) {
  const { name, daysTaken, turnaround } = vendor
  return (
    <div className="stack">
      <TwoWidths draw={(widthMm) => turnaroundStrip({ vendor: name, daysTaken, turnaround, atLeastDays, widthMm })} />
      <details>
        <summary>Turnaround as a table</summary>
        <Table
          label={`Days at ${name}`}
          columns={[
            { id: 'what', label: 'What', head: true },
            { id: 'days', label: 'Days', figure: true },
          ]}
          rows={tableRows(vendor)}
        />
      </details>
    </div>
  )
}

function tableRows({ turnaround, daysTaken }: AwayVendor) {
  const counted = [...new Set(daysTaken)].toSorted((a, b) => a - b)
  const row = (what: string, days: number) => ({ id: what, cells: { what, days } })
  return [
    ...(turnaround
      ? [row('Median', turnaround.medianDays), row('Nine out of ten within', turnaround.nineOfTenDays)]
      : []),
    ...counted.map((days) => {
      const heads = daysTaken.filter((one) => one === days).length
      return {
        id: `back ${days}`,
        cells: { what: `came back: ${heads} ${heads === 1 ? 'head' : 'heads'}`, days },
      }
    }),
  ]
}
