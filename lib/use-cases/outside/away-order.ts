import { addDays, dayIn, daysBetween } from '@/lib/core/shop/calendar'
import { headName } from '@/lib/core/shop/tag-number'
import type { Turnaround } from '@/lib/core/shop/turnaround'
import type { ListedOrder } from '@/lib/data/away-list'
import { stepsOf } from '@/lib/data/outside'

export type AwayHead = {
  readonly visitId: string
  readonly headId: string
  readonly tag: string
  readonly jobNumber: string
  readonly jobPromiseOn: string | null
  readonly back: boolean
}

export type AwayOrder = {
  readonly orderId: string
  readonly number: string
  readonly vendor: string
  readonly scope: readonly string[]
  readonly sentOn: string
  readonly daysOut: number
  readonly accepted: boolean
  readonly redo: boolean
  readonly promisedOn: string | null
  /** Days from the sending to that promise; null: none was given. */
  readonly promisedDays: number | null
  /** What this vendor usually takes; null: nothing has come back from there yet. */
  readonly usual: Turnaround | null
  /** Days over the vendor's promise; 0: not late. */
  readonly daysLate: number
  readonly heads: readonly AwayHead[]
  /** The earliest promise to a customer that waits for it. */
  readonly holdsUp: string | null
  /** When it is to be back as things stand: as promised, else as usual, never before today; null: nobody can say. */
  readonly expectedOn: string | null
  /** Days from then to that promise; below zero it cannot be kept; null: one of the two is not known. */
  readonly slackDays: number | null
}

type VisitOfOrder = {
  readonly id: string
  readonly headId: string
  readonly position: number
  readonly job: { readonly number: string; readonly promiseOn: string | null }
  readonly head: { readonly tags: readonly { readonly number: string }[] }
}

export const headLine = (visit: VisitOfOrder, back: boolean): AwayHead => ({
  visitId: visit.id,
  headId: visit.headId,
  tag: headName(visit.head.tags, visit.job.number, visit.position),
  jobNumber: visit.job.number,
  jobPromiseOn: visit.job.promiseOn,
  back,
})

export function awayOrder(order: ListedOrder, took: Turnaround | null, today: string, timeZone: string): AwayOrder {
  const sentOn = dayIn(timeZone, order.sentAt ?? order.createdAt)
  const out = order.visits.filter((line) => line.receivedAt === null)
  const promises = out.flatMap((line) => (line.visit.job.promiseOn ? [line.visit.job.promiseOn] : [])).sort()
  const holdsUp = promises[0] ?? null
  const said = order.promisedOn ?? (took ? addDays(sentOn, Math.ceil(took.medianDays)) : null)
  const expectedOn = said !== null && said < today ? today : said
  return {
    orderId: order.id,
    number: order.number,
    vendor: order.vendor.name,
    scope: stepsOf(order.scope),
    sentOn,
    daysOut: daysBetween(sentOn, today),
    accepted: order.acceptedAt !== null,
    redo: order.redoOfId !== null,
    promisedOn: order.promisedOn,
    promisedDays: order.promisedOn === null ? null : Math.max(0, daysBetween(sentOn, order.promisedOn)),
    usual: took,
    daysLate: order.promisedOn === null ? 0 : Math.max(0, daysBetween(order.promisedOn, today)),
    heads: order.visits.map((line) => headLine(line.visit, line.receivedAt !== null)),
    holdsUp,
    expectedOn,
    slackDays: expectedOn === null || holdsUp === null ? null : daysBetween(expectedOn, holdsUp),
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
