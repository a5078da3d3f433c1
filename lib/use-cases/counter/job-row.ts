import type { Whereabouts } from '@/lib/core/route/types'
import { headName } from '@/lib/core/shop/tag-number'
import { daysBetween } from '@/lib/core/shop/calendar'
import type { FloorVisit, WhyRow } from '@/lib/data/floor'
import type { RouteRules } from '@/lib/core/route/rules'
import { whyWaiting, type MayWait } from '@/lib/core/route/why-waiting'
import type { Station } from '@/lib/core/route/step-ids'
import { whyWaitingText } from '@/lib/words/why-waiting'

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

export type VisitsOfJob = readonly [FloorVisit, ...FloorVisit[]]

/** A job in one of the counter's lists, with the heads that the list is about. */
export function jobRow(visits: VisitsOfJob, today: string, rules: RouteRules): CounterJob {
  const { job } = visits[0]
  return {
    jobId: job.id,
    number: job.number,
    customer: job.customer,
    phone: job.phone,
    promiseOn: job.promiseOn,
    daysLeft: job.promiseOn === null ? null : daysBetween(today, job.promiseOn),
    urgent: job.urgent,
    heads: visits.map((visit) => ({
      headId: visit.headId,
      tag: headName(visit.tag === null ? [] : [{ number: visit.tag }], job.number, visit.position),
      whereabouts: visit.whereabouts as Whereabouts,
      why: whyWaitingText(whyWaiting(mayWait(visit)), rules),
      since: visit.changedAt,
    })),
  }
}

function mayWait({ whereabouts, why }: FloorVisit): MayWait {
  const of = (kind: WhyRow['kind']) => why.filter((row) => row.kind === kind)
  const fromVendor = ({ what, more }: WhyRow) => ({ vendor: what, promisedOn: more })
  return {
    whereabouts: whereabouts as Whereabouts,
    steps: of('step').map(({ what, more }) => ({ label: what, station: more as Station })),
    holds: of('hold').map(({ what }) => ({ reason: what })),
    waits: of('wait').map(({ what, more }) => ({ what, promisedOn: more })),
    findings: of('finding').map(({ what }) => ({ what })),
    supply: of('on order').map(fromVendor),
    outside: of('away').map(fromVendor),
  }
}
