import { addDays, dayIn, daysBetween } from '@/lib/core/shop/calendar'
import { orderDays, type OrderDays } from '@/lib/core/shop/order-days'
import type { Turnaround } from '@/lib/core/shop/turnaround'
import type { ListedOrder } from '@/lib/data/away-list'
import { stepsOf } from '@/lib/data/outside'
import { orderedHead, type OrderedHead } from '@/lib/data/vendor-orders'

export type AwayHead = OrderedHead & {
  readonly jobPromiseOn: string | null
  readonly back: boolean
}

export type AwayOrder = OrderDays & {
  readonly orderId: string
  readonly number: string
  readonly vendor: string
  readonly scope: readonly string[]
  readonly sentOn: string
  readonly accepted: boolean
  readonly redo: boolean
  readonly promisedOn: string | null
  /** Days from the sending to that promise; null: none was given. */
  readonly promisedDays: number | null
  /** What this vendor usually takes; null: nothing has come back from there yet. */
  readonly usual: Turnaround | null
  readonly heads: readonly AwayHead[]
  /** When it is to be back as things stand: as promised, else as usual, never before today; null: nobody can say. */
  readonly expectedOn: string | null
  /** Days from then to that promise; below zero it cannot be kept; null: one of the two is not known. */
  readonly slackDays: number | null
}

type VisitOfOrder = Parameters<typeof orderedHead>[0] & { readonly job: { readonly promiseOn: string | null } }

export const headLine = (visit: VisitOfOrder, back: boolean): AwayHead => ({
  ...orderedHead(visit),
  jobPromiseOn: visit.job.promiseOn,
  back,
})

export function awayOrder(order: ListedOrder, took: Turnaround | null, today: string, timeZone: string): AwayOrder {
  const sentOn = dayIn(timeZone, order.sentAt ?? order.createdAt)
  const out = order.visits.filter((line) => line.receivedAt === null)
  const { promisedOn } = order
  const waiting = out.map((line) => line.visit.job.promiseOn)
  const days = orderDays({ since: sentOn, promisedOn, isOpen: out.length > 0, waiting }, today)
  const said = promisedOn ?? (took ? addDays(sentOn, Math.ceil(took.medianDays)) : null)
  const expectedOn = said !== null && said < today ? today : said
  return {
    orderId: order.id,
    number: order.number,
    vendor: order.vendor.name,
    scope: stepsOf(order.scope),
    sentOn,
    ...days,
    accepted: order.acceptedAt !== null,
    redo: order.redoOfId !== null,
    promisedOn,
    promisedDays: promisedOn === null ? null : Math.max(0, daysBetween(sentOn, promisedOn)),
    usual: took,
    heads: order.visits.map((line) => headLine(line.visit, line.receivedAt !== null)),
    expectedOn,
    slackDays: expectedOn === null || days.holdsUp === null ? null : daysBetween(expectedOn, days.holdsUp),
  }
}

/** Farther off than any promise: what is not known comes last. */
const farDays = 100_000

/** What holds up a promise comes first, the promise at the greatest risk before all. */
export const byPromise = (orders: readonly AwayOrder[]): AwayOrder[] =>
  orders.toSorted(
    (a, b) =>
      (a.slackDays ?? farDays) - (b.slackDays ?? farDays) ||
      (a.holdsUp ?? '9999').localeCompare(b.holdsUp ?? '9999') ||
      b.daysOut - a.daysOut,
  )
