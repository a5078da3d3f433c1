import { Marks } from '@/app/_components/charts/marks-svg'
import { Phone } from '@/app/_components/ui/phone'
import { Table } from '@/app/_components/ui/table'
import { turnaroundStrip } from '@/lib/drawing/turnaround-strip'
import type { AwayVendor } from '@/lib/use-cases/outside/see-away'
import { OrderLine } from './order-line'
import styles from './vendor-part.module.css'

/** One vendor: how long they take, as words, picture and table, and what is there now. */
export function VendorPart({ vendor, locale }: { vendor: AwayVendor; locale: string }) {
  const took = vendor.turnaround
  return (
    <section className="stack part" aria-label={vendor.name}>
      <div className="row spread">
        <h2>{vendor.name}</h2>
        <Phone number={vendor.phone} />
      </div>
      <p className="soft">
        {took
          ? `Usually ${took.medianDays} days, nine of ten within ${took.nineOfTenDays} (${took.count} ${took.count === 1 ? 'head' : 'heads'} so far).`
          : 'Nothing has come back from here yet, so there is no turnaround to go by.'}
      </p>
      {took && <Strip vendor={vendor} />}
      <ul className="plain-list">
        {vendor.orders.map((order) => (
          <OrderLine key={order.orderId} order={order} locale={locale} />
        ))}
      </ul>
    </section>
  )
}

function Strip({ vendor }: { vendor: AwayVendor }) {
  const out = vendor.orders.map((order) => ({
    tags: order.heads.filter((head) => !head.back).map((head) => head.tag),
    days: order.daysOut,
    late: order.daysLate > 0,
  }))
  const drawing = turnaroundStrip({
    vendor: vendor.name,
    daysTaken: vendor.daysTaken,
    turnaround: vendor.turnaround,
    out,
  })
  return (
    <div className="stack">
      <Marks drawing={drawing} className={styles.strip} />
      <details>
        <summary>The same as a table</summary>
        <Table
          label={`Days at ${vendor.name}`}
          columns={[
            { id: 'what', label: 'What', head: true },
            { id: 'days', label: 'Days', figure: true },
          ]}
          rows={tableRows(vendor, out)}
        />
      </details>
    </div>
  )
}

function tableRows(
  { turnaround, daysTaken }: AwayVendor,
  out: readonly { readonly tags: readonly string[]; readonly days: number; readonly late: boolean }[],
) {
  const counted = [...new Set(daysTaken)].toSorted((a, b) => a - b)
  const row = (what: string, days: number) => ({ id: what, cells: { what, days } })
  return [
    ...(turnaround
      ? [row('Median', turnaround.medianDays), row('Nine of ten within', turnaround.nineOfTenDays)]
      : []),
    ...counted.map((days) => {
      const heads = daysTaken.filter((one) => one === days).length
      return {
        id: `back ${days}`,
        cells: { what: `came back: ${heads} ${heads === 1 ? 'head' : 'heads'}`, days },
      }
    }),
    ...out.map(({ tags, days, late }) => row(`out now: ${tags.join(', ')}${late ? ', late' : ''}`, days)),
  ]
}
