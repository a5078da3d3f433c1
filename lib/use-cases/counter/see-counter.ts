import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { sees } from '@/lib/core/access/fields'
import { must } from '@/lib/core/errors'
import type { Whereabouts } from '@/lib/core/route/types'
import { dayIn } from '@/lib/core/shop/calendar'
import { supplyOut } from '@/lib/data/away-list'
import { db } from '@/lib/data/db'
import { findingRow, type FindingRow } from '@/lib/data/finding-row'
import { counterFindings, floorVisits, type CounterFinding, type FloorVisit } from '@/lib/data/floor'
import { currentSettings } from '@/lib/data/settings'
import { shopOf } from '@/lib/data/shop'
import { supplyView, type SupplyView } from '@/lib/data/supply-view'
import { finishesOf } from '@/lib/dossier/finish/finishes'
import { workJob, type VisitsOfJob, type WorkJob } from './job-row'
import { filtersOf, isToCollect, workFilters, type WorkFilter } from './work-filters'

export type OpenFinding = FindingRow & { readonly customer: string; readonly phone: string }

export type CounterView = {
  readonly timeZone: string
  readonly locale: string
  readonly currency: string
  readonly today: string
  readonly filter: WorkFilter
  /** How many open jobs each filter shows. */
  readonly counts: Readonly<Record<WorkFilter, number>>
  /** A page of the jobs under the filter, the earliest promise first. */
  readonly jobs: readonly WorkJob[]
  /** What needs a deed now. */
  readonly answers: readonly OpenFinding[]
  /** What customers answered on their links lately. */
  readonly answeredByLink: readonly FindingRow[]
  readonly ready: readonly WorkJob[]
  readonly toRelease: readonly WorkJob[]
  readonly atRisk: readonly WorkJob[]
  /** Supply orders promised for today, and those that are late. */
  readonly arriving: readonly SupplyView[]
  /** Whether another page of the jobs follows. */
  readonly more: boolean
}

/** An answer on a link stands at the counter so many days. */
const lateDays = 7
const daysBefore = (now: Date, days: number) => new Date(now.getTime() - days * 24 * 60 * 60 * 1000)

/** Rows of the table on a page. */
const rowsOnPage = 60
/** So many jobs by the nearest promises are asked whether their promise is at risk; a later promise is not. */
const watched = 200

type Asked = { readonly now: Date; readonly filter?: WorkFilter; readonly page?: number }

/** The work in hand: a page of the jobs with a head that has not left, and above it what needs a deed now. */
export async function seeCounter(actor: Actor, { now, filter = 'all', page = 1 }: Asked): Promise<CounterView> {
  must(allow(actor, 'job.see'))
  const client = await db()
  const shop = await shopOf(client)
  const { timeZone } = shop
  const { values: settings } = await currentSettings(client)
  const today = dayIn(timeZone, now)
  const jobs = byJob(await floorVisits(client))
  const quiet = jobs.filter((visits) => filtersOf(visits, { today, timeZone, isAtRisk: () => false }).has(filter))
  const asked = [...new Set([...jobs.filter(isUnfinished).slice(0, watched), ...pageOf(quiet, page)])]
  const heads = (of: readonly VisitsOfJob[]) => of.flat().map(headToFinish)
  const finishes = await finishesOf(client, heads(asked), { now, timeZone, settings })
  const shown = { today, rules: settings.rules, manner: shop, finishes, withPrices: sees(actor, 'account') }
  const rowOf = (visits: VisitsOfJob): WorkJob => workJob(visits, shown)
  const known = asked.map(rowOf)
  const atRisk = new Set(known.filter((job) => job.atRisk).map(({ jobId }) => jobId))
  const under = new Map(
    jobs.map((visits) => [visits, filtersOf(visits, { today, timeZone, isAtRisk: (id) => atRisk.has(id) })]),
  )
  const listed = (of: WorkFilter) => jobs.filter((visits) => under.get(visits)?.has(of))
  const findings = await counterFindings(client, daysBefore(now, lateDays), 1)
  const supply = await supplyOut(client, 1, today)
  const chosen = listed(filter)
  return {
    ...{ timeZone, locale: shop.locale, currency: shop.currency, today, filter },
    counts: Object.fromEntries(workFilters.map((of) => [of, listed(of).length])) as Record<WorkFilter, number>,
    jobs: pageOf(chosen, page).map(rowOf),
    answers: findings.rows.filter((finding) => finding.answer === null).map(openFinding),
    answeredByLink: findings.rows.filter((finding) => finding.answer !== null).map(findingOf),
    ready: listed('ready').slice(0, rowsOnPage).map(rowOf),
    toRelease: jobs.filter(isToRelease).slice(0, rowsOnPage).map(rowOf),
    atRisk: known.filter((job) => job.atRisk),
    arriving: supply.rows
      .map((order) => supplyView(order, { today, timeZone, withCost: false }))
      .sort((a, b) => (a.promisedOn ?? '').localeCompare(b.promisedOn ?? '')),
    more: chosen.length > page * rowsOnPage,
  }
}

const pageOf = <T>(all: readonly T[], page: number): readonly T[] =>
  all.slice((page - 1) * rowsOnPage, page * rowsOnPage)

function byJob(visits: readonly FloorVisit[]): readonly VisitsOfJob[] {
  const jobs = new Map<string, [FloorVisit, ...FloorVisit[]]>()
  for (const visit of visits) {
    const others = jobs.get(visit.jobId)
    if (others) others.push(visit)
    else jobs.set(visit.jobId, [visit])
  }
  return [...jobs.values()]
}

const isUnfinished = (visits: VisitsOfJob): boolean => !visits.every(isToCollect)
const isToRelease = (visits: VisitsOfJob): boolean => visits.some(({ whereabouts }) => whereabouts === 'finished')

const headToFinish = ({ id, whereabouts, bookedAt, urgent, promiseOn }: FloorVisit) => ({
  ...{ id, bookedAt, urgent, promiseOn },
  whereabouts: whereabouts as Whereabouts,
})

const findingOf = ({ tag, headId, jobNumber, ...finding }: CounterFinding): FindingRow =>
  findingRow(finding, { tag: tag ?? '', headId, jobNumber })

const openFinding = (finding: CounterFinding): OpenFinding => ({
  ...findingOf(finding),
  customer: finding.customer ?? '',
  phone: finding.phone ?? '',
})
