import { allow, can } from '@/lib/core/access/can'
import { sees } from '@/lib/core/access/fields'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { formatAmount } from '@/lib/core/money/amount'
import type { Balance } from '@/lib/core/money/balance'
import { completeness } from '@/lib/core/route/completeness'
import { db } from '@/lib/data/db'
import { paperJob } from '@/lib/data/papers'
import { accountOf } from '@/lib/data/prices'
import { shopOf } from '@/lib/data/shop'
import { whereaboutsOf } from '@/lib/dossier/whereabouts-of'
import { loadDossiers, type Dossier } from '@/lib/dossier/dossier'
import { sideWords } from '@/lib/dossier/spec/spec-words'
import { mayLeave } from './may-leave'
import { readAt } from '@/lib/dossier/reading-text'
import { lackText } from '@/lib/words/lacks'

export type HeadToGo = {
  readonly visitId: string
  readonly headId: string
  readonly tag: string
  readonly casting: string
  readonly whereabouts: string
  readonly side: string
  readonly cameWith: string
  readonly rackPlace: string
  /** '' when it may go; else why it cannot. */
  readonly whyNot: string
  /** What a correction after the release shows to be out: told, the head may go. */
  readonly cautions: readonly string[]
  readonly gone: { readonly to: string; readonly at: Date } | null
  readonly hasSheet: boolean
}

export type HandOverView = {
  readonly jobId: string
  readonly number: string
  readonly customer: string
  readonly partsPlace: string
  readonly heads: readonly HeadToGo[]
  /** How the account stands; null for those who may not see prices. */
  readonly balance: Balance | null
  /** What is owed, as it is typed; '' when nothing is. */
  readonly owedText: string
  /** What the price lines that are on no invoice come to. */
  readonly openMinor: number
  /** Of the newest payment that counts. */
  readonly receipt: { readonly id: string; readonly number: string } | null
  /** Whether this person may hand over with something left to pay. */
  readonly mayGoUnpaid: boolean
  readonly timeZone: string
  readonly locale: string
  readonly currency: string
}

/** What can be handed over of a job, and why the rest cannot. */
export async function seeHandOver(actor: Actor, number: string): Promise<HandOverView> {
  must(allow(actor, 'visit.hand-over'))
  const client = await db()
  const job = await paperJob(client, number)
  const heads = await loadDossiers(client, { jobId: job.id })
  const { timeZone, locale, currency, currencyExponent } = await shopOf(client)
  const account = sees(actor, 'account') ? await accountOf(client, job.id) : null
  const owed = account?.dueMinor ?? 0
  return {
    jobId: job.id,
    number: job.number,
    customer: job.customer.contact?.name ?? '',
    partsPlace: job.partsPlace,
    heads: heads.map(headToGo),
    balance: account?.balance ?? null,
    owedText: owed > 0 ? formatAmount(owed, currencyExponent) : '',
    openMinor: account?.openMinor ?? 0,
    receipt: account?.payments.findLast(({ voided }) => voided === null)?.receipt ?? null,
    mayGoUnpaid: can(actor, 'visit.hand-over-unpaid'),
    timeZone,
    locale,
    currency,
  }
}

function headToGo(head: Dossier): HeadToGo {
  const { visit, facts, route } = head
  const released = visit.releases.length > 0
  return {
    visitId: visit.id,
    headId: visit.headId,
    tag: head.label,
    casting: visit.head.casting?.name ?? '',
    whereabouts: whereaboutsOf({ visit, facts, route }),
    side: sideWords(visit.side),
    cameWith: readAt(head.newest, 'check-in', 'came-with').at(-1)?.text ?? visit.cameWith,
    rackPlace: visit.rackPlace,
    whyNot: whyNot(head),
    cautions: released ? completeness(facts).map((gap) => lackText(gap.lack)) : [],
    gone: visit.handOver ? { to: visit.handOver.takenBy, at: visit.handOver.at } : null,
    hasSheet: released || visit.returned !== null,
  }
}

function whyNot({ visit, facts }: Dossier): string {
  if (visit.handOver) return 'Handed over.'
  if (mayLeave(visit)) return ''
  const missing = completeness(facts).length
  if (missing === 0) return 'Complete, not released yet. Release it first.'
  return `Not released: ${missing === 1 ? '1 item' : `${missing} items`} missing.`
}
