import type { ListedOrder } from '@/lib/data/away-list'
import { daysText, dayWords, type WhenManner } from '@/lib/core/shop/when-words'
import type { AwayHead, AwayOrder } from './away-order'

/** Somebody to telephone today, and why. */
export type Call = {
  readonly id: string
  readonly who: 'vendor' | 'customer'
  readonly name: string
  /** Left out for those who do not call customers. */
  readonly phone?: string
  readonly reasons: readonly string[]
  readonly heads: readonly AwayHead[]
  readonly orderId: string
  readonly number: string
}

/** So long a vendor has to say that an order is taken on. */
const daysToAccept = 2

function vendorReasons(order: AwayOrder, tomorrow: string): string[] {
  const { promisedOn, daysLate, accepted, daysOut } = order
  return [
    daysLate > 0 ? `late by ${daysText(daysLate)}` : '',
    daysLate === 0 && promisedOn !== null && promisedOn <= tomorrow
      ? promisedOn === tomorrow
        ? 'due tomorrow'
        : 'due today'
      : '',
    promisedOn === null ? 'no day promised' : '',
    !accepted && daysOut >= daysToAccept ? `not accepted after ${daysText(daysOut)}` : '',
  ].filter((reason) => reason !== '')
}

export function callsOf(
  records: readonly ListedOrder[],
  orders: readonly AwayOrder[],
  {
    tomorrow,
    callsCustomers,
    manner,
  }: {
    readonly tomorrow: string
    readonly callsCustomers: boolean
    readonly manner: WhenManner
  },
): Call[] {
  const orderOf = new Map(orders.map((order) => [order.orderId, order]))
  return records.flatMap((record): Call[] => {
    const order = orderOf.get(record.id)
    if (!order) return []
    const common = { orderId: order.orderId, number: order.number }
    const out = order.heads.filter((head) => !head.back)
    const reasons = vendorReasons(order, tomorrow)
    const vendor: Call = {
      ...common,
      id: order.orderId,
      who: 'vendor',
      name: record.vendor.name,
      phone: record.vendor.phone,
      reasons,
      heads: out,
    }
    return [
      ...(reasons.length > 0 ? [vendor] : []),
      ...customersAtRisk(record, order, out, manner).map(({ phone, ...call }) => ({
        ...common,
        ...call,
        ...(callsCustomers ? { phone } : {}),
      })),
    ]
  })
}

/** Customers whose promise is at risk while their head is at a vendor: a job may have several heads in one order. */
function customersAtRisk(
  record: ListedOrder,
  order: AwayOrder,
  out: readonly AwayHead[],
  manner: WhenManner,
): (Omit<Call, 'orderId' | 'number' | 'phone'> & { readonly phone: string })[] {
  const jobs = new Map(record.visits.map(({ visit }) => [visit.job.number, visit.job]))
  return [...jobs.values()].flatMap((job) => {
    const heads = out.filter((head) => head.jobNumber === job.number)
    const readyBy = heads.reduce((last, head) => ((head.readyBy ?? '') > last ? (head.readyBy ?? '') : last), '')
    if (heads.length === 0 || job.promiseOn === null || readyBy <= job.promiseOn) return []
    const ready = `nine of ten such heads are ready by ${dayWords(readyBy, manner)}`
    return [
      {
        id: `${order.orderId} ${job.number}`,
        who: 'customer' as const,
        name: job.customer.contact?.name ?? `job ${job.number}`,
        phone: job.customer.contact?.phone ?? '',
        reasons: [`job ${job.number} is promised for ${dayWords(job.promiseOn, manner)} and ${ready}`],
        heads,
      },
    ]
  })
}
