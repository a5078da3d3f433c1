import { daysToCome, type Samples } from '@/lib/core/finish/samples'
import type { Finish } from '@/lib/core/finish/types'
import { addDays, dayIn, daysBetween } from '@/lib/core/shop/calendar'
import { orderDays, type OrderDays } from '@/lib/core/shop/order-days'
import type { Turnaround } from '@/lib/core/shop/turnaround'
import type { ListedOrder } from '@/lib/data/away-list'
import { stepsOf } from '@/lib/data/outside'
import { orderedHead, type OrderedHead } from '@/lib/data/vendor-orders'

export type AwayHead = OrderedHead & {
  readonly jobPromiseOn: string | null
  readonly back: boolean
  /** Nine of ten such heads are ready by then; null: not away, or not known. */
  readonly readyBy: string | null
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
  /** When it is to be back: as promised, else as this vendor usually takes, given how long it has been out. */
  readonly expectedOn: string
  /** Days from the day by which nine of ten such heads are ready to the promise; below zero: at risk; null: no promise. */
  readonly slackDays: number | null
}

type VisitOfOrder = Parameters<typeof orderedHead>[0] & { readonly job: { readonly promiseOn: string | null } }

export const headLine = (visit: VisitOfOrder, back: boolean, finish?: Finish): AwayHead => ({
  ...orderedHead(visit),
  jobPromiseOn: visit.job.promiseOn,
  back,
  readyBy: finish?.nineOfTenOn ?? null,
})

type Known = {
  readonly took: Turnaround | null
  readonly today: string
  readonly timeZone: string
  /** How long this vendor takes. */
  readonly samples: Samples
  readonly finishes: ReadonlyMap<string, Finish>
}

export function awayOrder(order: ListedOrder, { took, today, timeZone, samples, finishes }: Known): AwayOrder {
  const sentOn = dayIn(timeZone, order.sentAt ?? order.createdAt)
  const out = order.visits.filter((line) => line.receivedAt === null)
  const { promisedOn } = order
  const waiting = out.map((line) => line.visit.job.promiseOn)
  const days = orderDays({ since: sentOn, promisedOn, isOpen: out.length > 0, waiting }, today)
  const usual = addDays(today, Math.ceil(daysToCome(samples.days, middle, days.daysOut)))
  const spare = out.flatMap(({ visit }) => spareDays(finishes.get(visit.id), visit.job.promiseOn))
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
    heads: order.visits.map((line) => headLine(line.visit, line.receivedAt !== null, finishes.get(line.visit.id))),
    // A day that has passed says nothing any more.
    expectedOn: promisedOn !== null && promisedOn >= today ? promisedOn : usual,
    slackDays: spare.length === 0 ? null : Math.min(...spare),
  }
}

/** Half of what took longer than it has lasted comes back within this. */
const middle = 0.5

const spareDays = (finish: Finish | undefined, promiseOn: string | null): number[] =>
  finish && promiseOn !== null ? [daysBetween(finish.nineOfTenOn, promiseOn)] : []

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
