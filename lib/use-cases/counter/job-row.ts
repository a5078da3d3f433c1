import type { Finish } from '@/lib/core/finish/types'
import type { RouteRules } from '@/lib/core/route/rules'
import type { Station } from '@/lib/core/route/step-ids'
import type { Whereabouts } from '@/lib/core/route/types'
import { whyWaiting, type MayWait } from '@/lib/core/route/why-waiting'
import { daysBetween } from '@/lib/core/shop/calendar'
import { headName } from '@/lib/core/shop/tag-number'
import type { WhenManner } from '@/lib/core/shop/when-words'
import type { OpenRow } from '@/lib/data/finish-history'
import type { FloorVisit } from '@/lib/data/floor'
import { isAtRisk, latestOf, type Finishes } from '@/lib/dossier/finish/finishes'
import { basisText, longestText } from '@/lib/words/finish'
import { whereAndWait } from '@/lib/words/work-in-hand'

export type WorkHead = {
  readonly headId: string
  readonly tag: string
  readonly whereabouts: Whereabouts
  readonly next: string
  readonly waits: string
  /** Since when it has been where it is. */
  readonly since: Date
}

/** A job with a head that has not left. */
export type WorkJob = {
  readonly jobId: string
  readonly number: string
  readonly customer: string
  readonly phone: string
  readonly promiseOn: string | null
  /** Days to the promise; below zero: late; null: nothing promised. */
  readonly daysLeft: number | null
  readonly urgent: boolean
  readonly heads: readonly WorkHead[]
  /** Null: all that is here is ready. */
  readonly finish: {
    readonly middleOn: string
    readonly nineOfTenOn: string
    readonly why: string
    readonly from: string
  } | null
  readonly atRisk: boolean
  /** Null for those who see no prices. */
  readonly dueMinor: number | null
}

export type VisitsOfJob = readonly [FloorVisit, ...FloorVisit[]]

type Shown = {
  readonly today: string
  readonly rules: RouteRules
  readonly manner: WhenManner
  readonly finishes: Finishes
  readonly withPrices: boolean
}

export function workJob(visits: VisitsOfJob, { today, rules, manner, finishes, withPrices }: Shown): WorkJob {
  const [first] = visits
  const finish = latestOf(visits.map(({ id }) => finishes.of.get(id)))
  return {
    jobId: first.jobId,
    number: first.jobNumber,
    customer: first.customer,
    phone: first.phone,
    promiseOn: first.promiseOn,
    daysLeft: first.promiseOn === null ? null : daysBetween(today, first.promiseOn),
    urgent: first.urgent,
    heads: visits.map((visit) => ({
      headId: visit.headId,
      tag: headName(visit.tag === null ? [] : [{ number: visit.tag }], first.jobNumber, visit.position),
      whereabouts: visit.whereabouts as Whereabouts,
      ...whereAndWait(whyWaiting(mayWait(visit, finishes.rows.get(visit.id) ?? [])), rules, manner),
      since: visit.changedAt,
    })),
    finish: finish && finishWords(finish, rules),
    atRisk: isAtRisk(finish, first.promiseOn),
    dueMinor: withPrices ? first.dueMinor : null,
  }
}

const finishWords = (finish: Finish, rules: RouteRules): WorkJob['finish'] => ({
  middleOn: finish.middleOn,
  nineOfTenOn: finish.nineOfTenOn,
  why: longestText(finish.longest, rules),
  from: basisText(finish.from),
})

function mayWait({ whereabouts }: FloorVisit, rows: readonly OpenRow[]): MayWait {
  const of = (kind: OpenRow['kind']) => rows.filter((row) => row.kind === kind)
  const fromVendor = ({ what, more }: OpenRow) => ({ vendor: what, promisedOn: more })
  return {
    whereabouts: whereabouts as Whereabouts,
    steps: of('step')
      .filter(({ scope }) => scope === 'ready' || scope === 'started')
      .map(({ what, more }) => ({ label: what, station: more as Station })),
    holds: of('hold').map(({ what }) => ({ reason: what })),
    waits: of('wait').map(({ what, more }) => ({ what, promisedOn: more })),
    findings: of('finding').map(({ what }) => ({ what })),
    supply: of('on order').map(fromVendor),
    outside: of('away').map(fromVendor),
  }
}
