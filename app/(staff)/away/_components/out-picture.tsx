import { Table } from '@/app/_components/ui/table'
import { farthestDay, outNow, type OutNow } from '@/lib/drawing/out-now'
import type { AwayOrder } from '@/lib/use-cases/outside/see-away'
import { TwoWidths } from './two-widths'

type Props = {
  title: string
  orders: readonly AwayOrder[]
  /** Several vendors in one picture. */
  withVendor?: boolean
  atLeastDays?: number
}

/** How long each order has been out, against what its vendor usually takes and what was promised; and the same as a table. */
export function OutPicture({ title, orders, withVendor = false, atLeastDays = 0 }: Props) {
  if (orders.length === 0) return null
  const rows = orders.map(outOf)
  return (
    <div className="stack">
      <TwoWidths draw={(widthMm) => outNow(rows, { title, withVendor, widthMm, atLeastDays })} />
      <details>
        <summary>Orders as a table</summary>
        <Table
          label={title}
          columns={[
            { id: 'heads', label: 'Heads', head: true },
            { id: 'number', label: 'Order' },
            ...(withVendor ? [{ id: 'vendor', label: 'Vendor' }] : []),
            { id: 'days', label: 'Days out', figure: true },
            { id: 'promised', label: 'Promised within', figure: true },
            { id: 'late', label: 'Late by', figure: true },
            { id: 'median', label: 'Median', figure: true },
            { id: 'nine', label: 'Nine out of ten', figure: true },
          ]}
          rows={orders.map(tableRow)}
        />
      </details>
    </div>
  )
}

/** The days that the picture of these orders needs. */
export const daysOf = (orders: readonly AwayOrder[]): number =>
  Math.max(0, ...orders.map((order) => farthestDay(outOf(order))))

const tagsOut = (order: AwayOrder): string[] => order.heads.filter((head) => !head.back).map((head) => head.tag)

const outOf = (order: AwayOrder): OutNow => ({
  tags: tagsOut(order),
  vendor: order.vendor,
  days: order.daysOut,
  promisedDays: order.promisedDays,
  usual: order.usual,
})

const tableRow = (order: AwayOrder) => ({
  id: order.orderId,
  cells: {
    heads: tagsOut(order).join(', '),
    number: order.number,
    vendor: order.vendor,
    days: order.daysOut,
    promised: order.promisedDays ?? 'no promise',
    late: order.daysLate > 0 ? order.daysLate : '',
    median: order.usual?.medianDays ?? '',
    nine: order.usual?.nineOfTenDays ?? '',
  },
})
