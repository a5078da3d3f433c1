import type { Whereabouts } from '@/lib/core/route/types'
import type { Actor } from '@/lib/core/access/roles'
import { allow, can } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { dayIn, daysBetween } from '@/lib/core/shop/calendar'
import { db } from '@/lib/data/db'
import { findingsOfJob } from '@/lib/data/findings'
import { jobRecord, type JobRecord } from '@/lib/data/jobs'
import { heldInPairs, matesHeld, type HeldHead } from '@/lib/data/held-mates'
import { namesOf } from '@/lib/data/people'
import { accountOf, type Account } from '@/lib/data/prices'
import { currentRules, settingsOfVisits } from '@/lib/data/settings'
import { shopOf } from '@/lib/data/shop'
import type { PricePick } from '@/lib/core/money/price-pick'
import { pricePicks } from '@/lib/data/price-picks'
import { jobSupply, type JobSupply } from '@/lib/data/job-supply'
import { findingRowOf, type FindingRow } from '@/lib/data/finding-row'
import { engineView, type EngineView } from './engine-view'
import { headView, type JobHead } from './head-view'
import { pairView, type JobPair } from './pair-view'

export type JobView = {
  readonly id: string
  readonly number: string
  readonly version: number
  readonly preset: string
  readonly customer: {
    readonly name: string
    readonly phone: string
    readonly email: string
    readonly address: string
  }
  readonly promiseOn: string | null
  /** Days to the promise; below zero: late; null: nothing promised, or all of it has left. */
  readonly daysLeft: number | null
  readonly urgent: boolean
  readonly note: string
  readonly partsPlace: string
  readonly classLimits: { readonly flatOnly: boolean; readonly minCc: string; readonly maxCut: string }
  readonly finishAsked: string
  readonly bookedAt: Date
  readonly engine: EngineView
  readonly pairs: readonly JobPair[]
  readonly heads: readonly (JobHead & { readonly matesHeld: readonly HeldHead[] })[]
  readonly calls: readonly {
    readonly id: string
    readonly at: Date
    readonly by: string
    readonly text: string
  }[]
  /** What was found beyond the order, the oldest first. */
  readonly findings: readonly FindingRow[]
  /** Only for those who may see prices; null otherwise. */
  readonly account: Account | null
  /** What a price line can be taken from; empty for those who see no prices. */
  readonly priceList: readonly PricePick[]
  /** What is bought for it. */
  readonly supply: JobSupply & { readonly mayOrder: boolean }
  readonly timeZone: string
  readonly locale: string
  readonly currency: string
  readonly may: {
    readonly change: boolean
    readonly handOver: boolean
    readonly link: boolean
    readonly ask: boolean
  }
}

/** One job as its page shows it to this person. */
export async function seeJob(actor: Actor, input: { number: string; now: Date }): Promise<JobView> {
  must(allow(actor, 'job.see'))
  const client = await db()
  const job = await jobRecord(client, input.number)
  const shop = await shopOf(client)
  const today = dayIn(shop.timeZone, input.now)
  const rulesNow = await currentRules(client)
  const settingsOf = await settingsOfVisits(client, job.visits)
  const names = await namesOf(job.calls.map((call) => call.byId))
  const held = await heldInPairs(
    client,
    job.pairs.map(({ id }) => id),
  )
  const account = can(actor, 'price.see') ? await accountOf(client, job.id) : null
  return {
    ...jobFields(job),
    daysLeft: job.promiseOn === null || hasLeft(job) ? null : daysBetween(today, job.promiseOn),
    customer: contactFor(actor, job),
    engine: engineView(job.engine),
    pairs: job.pairs.map((pair) => pairView(pair, job.visits, settingsOf)),
    heads: job.visits.map((visit) => ({
      ...headView(visit, job.number, settingsOf(visit).rules, rulesNow),
      matesHeld: matesHeld(held, visit),
    })),
    calls: job.calls.map(({ id, at, byId, text }) => ({ id, at, by: names.get(byId) ?? '', text })),
    findings: (await findingsOfJob(client, job.id)).map(findingRowOf),
    account,
    priceList: account === null ? [] : await pricePicks(client, shop),
    supply: {
      ...(await jobSupply(client, job.id, { today, timeZone: shop.timeZone })),
      mayOrder: can(actor, 'supply.order'),
    },
    timeZone: shop.timeZone,
    locale: shop.locale,
    currency: shop.currency,
    may: {
      change: can(actor, 'job.change'),
      handOver: can(actor, 'visit.hand-over'),
      link: can(actor, 'customer-link.make'),
      ask: can(actor, 'finding.ask'),
    },
  }
}

const left: readonly string[] = ['handed over', 'returned as is', 'scrapped'] satisfies Whereabouts[]

/** A promise is kept or broken once all heads have left: it is not late any more. */
const hasLeft = ({ visits }: JobRecord): boolean =>
  visits.length > 0 && visits.every(({ place }) => left.includes(place?.whereabouts ?? ''))

const jobFields = (job: JobRecord) => ({
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

/** Name and phone for everybody at work; how else the customer is reached, for the counter. */
function contactFor(actor: Actor, job: JobRecord): JobView['customer'] {
  const contact = job.customer.contact
  const desk = can(actor, 'customer.change')
  return {
    name: contact?.name ?? '',
    phone: contact?.phone ?? '',
    email: desk ? (contact?.email ?? '') : '',
    address: desk ? (contact?.address ?? '') : '',
  }
}
