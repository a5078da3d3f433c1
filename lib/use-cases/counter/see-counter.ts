import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import type { Whereabouts } from '@/lib/core/route/types'
import { dayIn } from '@/lib/core/shop/calendar'
import { db } from '@/lib/data/db'
import { answersByLink } from '@/lib/data/findings'
import { openFindings, openVisits, type OpenVisit } from '@/lib/data/jobs'
import { currentRules } from '@/lib/data/settings'
import { shopOf } from '@/lib/data/shop'
import { findingRowOf, type FindingRow } from '@/lib/data/finding-row'
import { jobRow, type CounterJob, type VisitsOfJob } from './job-row'

export type OpenFinding = {
  readonly id: string
  readonly what: string
  readonly headId: string
  readonly tag: string
  readonly jobNumber: string
  readonly customer: string
  readonly phone: string
  readonly reportedAt: Date
  readonly askedAt: Date | null
  readonly how: string
}

export type CounterView = {
  readonly timeZone: string
  readonly locale: string
  readonly today: string
  readonly expected: readonly CounterJob[]
  readonly ready: readonly CounterJob[]
  readonly finished: readonly CounterJob[]
  readonly answers: readonly OpenFinding[]
  /** What customers answered on their links lately. */
  readonly answeredByLink: readonly FindingRow[]
  readonly atRisk: readonly CounterJob[]
}

/** An answer on a link stands at the counter so many days. */
const lateDays = 7
const daysBefore = (now: Date, days: number) => new Date(now.getTime() - days * 24 * 60 * 60 * 1000)

/** A promise this near, with the work not finished, is at risk. */
const nearDays = 2
const notFinished: readonly Whereabouts[] = [
  'expected',
  'on order',
  'in house',
  'away',
  'waiting for parts',
  'waiting for an answer',
  'held',
]

/** What the counter must know at a glance; a job stands once in a list, with those of its heads that the list is about. */
export async function seeCounter(actor: Actor, input: { now: Date }): Promise<CounterView> {
  must(allow(actor, 'job.see'))
  const client = await db()
  const shop = await shopOf(client)
  const rules = await currentRules(client)
  const visits = await openVisits(client)
  const today = dayIn(shop.timeZone, input.now)
  const jobsWhere = (places: readonly Whereabouts[]): CounterJob[] =>
    grouped(visits, places).map((of) => jobRow(of, today, rules))
  return {
    timeZone: shop.timeZone,
    locale: shop.locale,
    today,
    expected: jobsWhere(['expected', 'on order']),
    ready: jobsWhere(['released']),
    finished: jobsWhere(['finished']),
    answers: (await openFindings(client)).map(openFinding),
    answeredByLink: (await answersByLink(client, daysBefore(input.now, lateDays))).map(findingRowOf),
    atRisk: jobsWhere(notFinished)
      .filter((job) => job.daysLeft !== null && job.daysLeft <= nearDays)
      .sort((a, b) => (a.daysLeft ?? 0) - (b.daysLeft ?? 0)),
  }
}

function grouped(visits: readonly OpenVisit[], places: readonly Whereabouts[]): VisitsOfJob[] {
  const jobs = new Map<string, VisitsOfJob>()
  for (const visit of visits) {
    if (!places.some((place) => place === visit.place?.whereabouts)) continue
    const others = jobs.get(visit.job.id)
    jobs.set(visit.job.id, others ? [...others, visit] : [visit])
  }
  return [...jobs.values()]
}

const openFinding = (finding: Awaited<ReturnType<typeof openFindings>>[number]): OpenFinding => ({
  id: finding.id,
  what: finding.what,
  headId: finding.visit.head.id,
  tag: finding.visit.head.tags[0]?.number ?? '',
  jobNumber: finding.visit.job.number,
  customer: finding.visit.job.customer.contact?.name ?? '',
  phone: finding.visit.job.customer.contact?.phone ?? '',
  reportedAt: finding.reportedAt,
  askedAt: finding.askedAt,
  how: finding.askedHow,
})
