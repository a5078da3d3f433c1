import type { Whereabouts } from '@/lib/core/route/types'
import { headName } from '@/lib/core/shop/tag-number'
import { daysBetween } from '@/lib/core/shop/calendar'
import type { OpenVisit } from '@/lib/data/jobs'
import type { RouteRules } from '@/lib/core/route/rules'
import { whyWaiting } from '@/lib/core/route/why-waiting'

export type CounterJob = {
  readonly jobId: string
  readonly number: string
  readonly customer: string
  readonly phone: string
  readonly promiseOn: string | null
  /** Days to the promise; below zero: late; null: nothing promised. */
  readonly daysLeft: number | null
  readonly urgent: boolean
  readonly heads: readonly {
    readonly headId: string
    readonly tag: string
    readonly whereabouts: Whereabouts
    readonly why: string
    /** Since when it has been there. */
    readonly since: Date | null
  }[]
}

export type VisitsOfJob = readonly [OpenVisit, ...OpenVisit[]]

/** A job in one of the counter's lists, with the heads that the list is about. */
export function jobRow(visits: VisitsOfJob, today: string, rules: RouteRules): CounterJob {
  const { job } = visits[0]
  return {
    jobId: job.id,
    number: job.number,
    customer: job.customer.contact?.name ?? '',
    phone: job.customer.contact?.phone ?? '',
    promiseOn: job.promiseOn,
    daysLeft: job.promiseOn === null ? null : daysBetween(today, job.promiseOn),
    urgent: job.urgent,
    heads: visits.map((visit) => ({
      headId: visit.head.id,
      tag: headName(visit.head.tags, job.number, visit.position),
      whereabouts: (visit.place?.whereabouts ?? 'expected') as Whereabouts,
      why: whyWaiting(visit, rules),
      since: visit.place?.changedAt ?? null,
    })),
  }
}
