import type { Actor } from '@/lib/core/access/roles'
import { allow, can } from '@/lib/core/access/can'
import { sees } from '@/lib/core/access/fields'
import { must } from '@/lib/core/errors'
import type { PricePick } from '@/lib/core/money/price-pick'
import type { Whereabouts } from '@/lib/core/route/types'
import { dayIn, daysBetween } from '@/lib/core/shop/calendar'
import { estimateNumber } from '@/lib/data/bench'
import { db } from '@/lib/data/db'
import type { Paged } from '@/lib/data/paging'
import { findingRow, type FindingRow } from '@/lib/data/finding-row'
import { jobWithCalls } from '@/lib/data/jobs'
import { namesOf } from '@/lib/data/people'
import { pricePicks } from '@/lib/data/price-picks'
import { accountOf } from '@/lib/data/prices'
import { shopOf } from '@/lib/data/shop'
import { taxPicks } from '@/lib/data/tax-rates'
import { supplyOfJob } from '@/lib/data/supply-of-job'
import { supplyView } from '@/lib/data/supply-view'
import { loadDossiers, type Dossier } from '@/lib/dossier/dossier'
import { finishOfJob, type JobFinish } from '@/lib/dossier/finish/finish-of-job'
import { basisText, longestText } from '@/lib/words/finish'
import { noRules, type RouteRules } from '@/lib/core/route/rules'
import { whereaboutsOf } from '@/lib/dossier/whereabouts-of'
import { accountView, type AccountView } from './account-view'
import { engineView, type EngineView } from './engine-view'
import { headView, type JobHead } from './head-view'
import { supplyByVisit, toOrder, type JobSupply } from './job-supply'
import { pairViews, type JobPair } from './pair-view'
import { wantedView, type WantedView } from './wanted-view'

export type JobFinishView = {
  readonly middleOn: string
  readonly nineOfTenOn: string
  readonly why: string
  readonly from: string
  readonly atRisk: boolean
}

export type JobView = {
  readonly id: string
  readonly number: string
  readonly version: number
  readonly preset: string
  readonly customer: {
    /** '' for those who do not see customers' pages. */
    readonly id: string
    readonly name: string
    readonly phone: string
    readonly email: string
    readonly address: string
  }
  readonly promiseOn: string | null
  /** When the last of its heads will be ready; null: all of them are, or have left. */
  readonly finish: JobFinishView | null
  /** Days to the promise; below zero: late; null: nothing promised, or all of it has left. */
  readonly daysLeft: number | null
  readonly urgent: boolean
  readonly note: string
  readonly partsPlace: string
  readonly classLimits: { readonly flatOnly: boolean; readonly minCc: string; readonly maxCut: string }
  readonly finishAsked: string
  readonly bookedAt: Date
  /** Some of its heads are still to leave. */
  readonly isOpen: boolean
  readonly cancelled: { readonly at: Date; readonly reason: string } | null
  /** The answer of the cut bench that it was booked from: kept, or as its question. */
  readonly from: {
    readonly estimate: { readonly id: string; readonly number: string } | null
    readonly benchQuery: string
  }
  readonly engine: EngineView
  /** What its benches work to. */
  readonly wanted: WantedView
  readonly pairs: readonly JobPair[]
  readonly heads: readonly JobHead[]
  readonly calls: readonly {
    readonly id: string
    readonly at: Date
    readonly by: string
    readonly text: string
  }[]
  /** What was found beyond the order, the oldest first. */
  readonly findings: readonly FindingRow[]
  /** Only for those who may see prices; null otherwise. */
  readonly account: AccountView | null
  /** What a price line can be taken from; empty for those who see no prices. */
  readonly priceList: Paged<PricePick>
  /** What is bought for it. */
  readonly supply: JobSupply & { readonly mayOrder: boolean }
  readonly timeZone: string
  readonly locale: string
  readonly currency: string
  readonly may: {
    readonly change: boolean
    readonly undoHandOver: boolean
    readonly handOver: boolean
    readonly link: boolean
    readonly ask: boolean
  }
}

/** One job as its page shows it to this person. */
export async function seeJob(actor: Actor, input: { number: string; now: Date }): Promise<JobView> {
  must(allow(actor, 'job.see'))
  const client = await db()
  const job = await jobWithCalls(client, input.number)
  const shop = await shopOf(client)
  const today = dayIn(shop.timeZone, input.now)
  const heads = await loadDossiers(client, { jobId: job.id })
  const orders = await supplyOfJob(client, job.id)
  const standing = sees(actor, 'account') ? await accountOf(client, job.id) : null
  const names = await namesOf([...job.calls, ...(standing?.payments ?? [])].map(({ byId }) => byId))
  const account = standing && accountView(standing, { ...shop, names, taxPicks: await taxPicks(client) })
  const bought = supplyByVisit(orders)
  const finish = await finishOfJob(client, heads, { now: input.now, timeZone: shop.timeZone })
  return {
    ...jobFields(job),
    isOpen: !hasLeft(heads),
    cancelled: job.cancelledAt === null ? null : { at: job.cancelledAt, reason: job.cancelReason },
    from: {
      estimate: job.estimateId === null ? null : await estimateNumber(client, job.estimateId),
      benchQuery: job.benchQuery,
    },
    daysLeft: job.promiseOn === null || hasLeft(heads) ? null : daysBetween(today, job.promiseOn),
    finish: finish && finishView(finish, heads[0]?.today.values.rules),
    customer: contactFor(actor, heads),
    engine: engineView(heads[0]?.visit.job.engine ?? null),
    wanted: wantedView(heads),
    pairs: pairViews(heads),
    heads: heads.map((head) => headView(head, bought(head.visit.id), shop.locale)),
    calls: job.calls.map(({ id, at, byId, text }) => ({ id, at, by: names.get(byId) ?? '', text })),
    findings: heads.flatMap(findingsOf).sort(byReport),
    account,
    priceList: account === null ? { rows: [], more: false } : await pricePicks(client, shop),
    supply: {
      orders: orders.map((order) => supplyView(order, { today, timeZone: shop.timeZone, withCost: false })),
      toOrder: toOrder(heads, orders),
      mayOrder: can(actor, 'supply.order'),
    },
    timeZone: shop.timeZone,
    locale: shop.locale,
    currency: shop.currency,
    may: {
      change: can(actor, 'job.change'),
      undoHandOver: can(actor, 'visit.undo-hand-over'),
      handOver: can(actor, 'visit.hand-over'),
      link: can(actor, 'customer-link.make'),
      ask: can(actor, 'finding.ask'),
    },
  }
}

const left: readonly Whereabouts[] = ['handed over', 'returned as is', 'scrapped', 'taken off']

/** A promise is kept or broken once all heads have left: it is not late any more. */
const hasLeft = (heads: readonly Dossier[]): boolean =>
  heads.length > 0 && heads.every((head) => left.includes(whereaboutsOf(head)))

const finishView = ({ finish, atRisk }: JobFinish, rules: RouteRules = noRules): JobFinishView => ({
  middleOn: finish.middleOn,
  nineOfTenOn: finish.nineOfTenOn,
  why: longestText(finish.longest, rules),
  from: basisText(finish.from),
  atRisk,
})

const jobFields = (job: Awaited<ReturnType<typeof jobWithCalls>>) => ({
  id: job.id,
  number: job.number,
  version: job.version,
  preset: job.preset,
  promiseOn: job.promiseOn,
  urgent: job.urgent,
  note: job.note,
  partsPlace: job.partsPlace,
  classLimits: { flatOnly: job.classFlatOnly, minCc: job.classMinText, maxCut: job.classMaxCutText },
  finishAsked: job.finishAsked,
  bookedAt: job.createdAt,
})

/** All findings of a head, with the tag it wears. */
function findingsOf({ visit: { findings, head, job } }: Dossier): FindingRow[] {
  const tag = head.tags.find(({ to }) => to === null)?.number ?? ''
  return findings.map((finding) => findingRow(finding, { tag, headId: head.id, jobNumber: job.number }))
}

const byReport = (a: FindingRow, b: FindingRow): number =>
  a.reportedAt.getTime() - b.reportedAt.getTime() || (a.id < b.id ? -1 : 1)

/** Name and phone for everybody at work; how else the customer is reached, for the counter. */
function contactFor(actor: Actor, heads: readonly Dossier[]): JobView['customer'] {
  const contact = heads[0]?.visit.job.customer.contact
  const desk = sees(actor, 'contact')
  return {
    id: can(actor, 'customer.see') ? (heads[0]?.visit.job.customerId ?? '') : '',
    name: contact?.name ?? '',
    phone: contact?.phone ?? '',
    email: desk ? (contact?.email ?? '') : '',
    address: desk ? (contact?.address ?? '') : '',
  }
}
