import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import type { Whereabouts } from '@/lib/core/route/types'
import { dayIn } from '@/lib/core/shop/calendar'
import { db } from '@/lib/data/db'
import { counterFindings, floorVisits, type CounterFinding, type FloorVisit } from '@/lib/data/floor'
import { currentRules } from '@/lib/data/settings'
import { shopOf } from '@/lib/data/shop'
import { findingRow, type FindingRow } from '@/lib/data/finding-row'
import { jobRow, type CounterJob, type VisitsOfJob } from './job-row'

export type OpenFinding = FindingRow & { readonly customer: string; readonly phone: string }

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
  /** Whether another page follows. */
  readonly more: boolean
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

/** What the counter must know at a glance, a page of jobs by promise; a job stands once in a list, with those of its heads that the list is about. */
export async function seeCounter(actor: Actor, input: { now: Date; page?: number }): Promise<CounterView> {
  must(allow(actor, 'job.see'))
  const client = await db()
  const shop = await shopOf(client)
  const rules = await currentRules(client)
  const page = input.page ?? 1
  const visits = await floorVisits(client, page)
  const findings = await counterFindings(client, daysBefore(input.now, lateDays), page)
  const today = dayIn(shop.timeZone, input.now)
  const jobsWhere = (places: readonly Whereabouts[]): CounterJob[] =>
    grouped(visits.rows, places)
      .map((of) => jobRow(of, today, rules))
      .sort((a, b) => (a.number < b.number ? -1 : 1))
  return {
    timeZone: shop.timeZone,
    locale: shop.locale,
    today,
    expected: jobsWhere(['expected', 'on order']),
    ready: jobsWhere(['released']),
    finished: jobsWhere(['finished']),
    answers: findings.rows.filter((finding) => finding.answer === null).map(openFinding),
    answeredByLink: findings.rows.filter((finding) => finding.answer !== null).map(rowOf),
    atRisk: jobsWhere(notFinished)
      .filter((job) => job.daysLeft !== null && job.daysLeft <= nearDays)
      .sort((a, b) => (a.daysLeft ?? 0) - (b.daysLeft ?? 0)),
    more: visits.more || findings.more,
  }
}

function grouped(visits: readonly FloorVisit[], places: readonly Whereabouts[]): VisitsOfJob[] {
  const jobs = new Map<string, VisitsOfJob>()
  for (const visit of visits) {
    if (!places.some((place) => place === visit.whereabouts)) continue
    const others = jobs.get(visit.job.id)
    jobs.set(visit.job.id, others ? [...others, visit] : [visit])
  }
  return [...jobs.values()]
}

const rowOf = ({ tag, headId, jobNumber, ...finding }: CounterFinding): FindingRow =>
  findingRow(finding, { tag: tag ?? '', headId, jobNumber })

const openFinding = (finding: CounterFinding): OpenFinding => ({
  ...rowOf(finding),
  customer: finding.customer ?? '',
  phone: finding.phone ?? '',
})
