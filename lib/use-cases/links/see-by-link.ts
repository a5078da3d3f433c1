import { progress, type ProgressMark } from '@/lib/core/route/progress'
import type { Whereabouts } from '@/lib/core/route/types'
import type { SpecSheetData } from '@/lib/core/spec/spec-sheet'
import { db } from '@/lib/data/db'
import { jobOfLink, openLink, refuseOtherJobs } from '@/lib/data/links'
import { accountOf, type Account } from '@/lib/data/prices'
import { shopOf } from '@/lib/data/shop'
import { finishOfJob } from '@/lib/dossier/finish/finish-of-job'
import { longestForCustomer } from '@/lib/words/finish'
import { whereaboutsOf } from '@/lib/dossier/whereabouts-of'
import { isOnLink, questionOf, type Manner, type Question } from '@/lib/dossier/question'
import { shopBlock } from '@/lib/dossier/shop-block'
import { loadDossiers, type Dossier } from '@/lib/dossier/dossier'
import type { StoredPaper } from '@/lib/papers/kept-paper'
import { newestSpec, specPaper } from '@/lib/papers/spec-paper'

export type LinkHead = {
  readonly visitId: string
  readonly tag: string
  readonly casting: string
  /** Where it is, in words for somebody who does not know the shop. */
  readonly where: string
  readonly marks: readonly ProgressMark[]
  /** Once it is released, or goes back as it is. */
  readonly spec: SpecSheetData | null
}

/** With the photos that were taken of what was found. */
export type LinkQuestion = Question & {
  readonly photos: readonly Pick<Dossier['visit']['photos'][number], 'id' | 'caption' | 'widthPx' | 'heightPx'>[]
}

type LinkAccount = Pick<Account, 'taxes' | 'totalMinor' | 'paidMinor' | 'balance'> & {
  readonly prices: readonly Pick<
    Account['prices'][number],
    'id' | 'text' | 'reason' | 'quantityThousandths' | 'unitMinor'
  >[]
}

/** All that a customer's link shows; what is not in this type cannot be shown. */
export type LinkView = {
  readonly shop: SpecSheetData['shop']
  readonly timeZone: string
  readonly locale: string
  readonly currency: string
  readonly jobNumber: string
  readonly promiseOn: string | null
  /** The middle day, which is no promise, and what it waits for; null: all of it is ready, or has left. */
  readonly expected: { readonly on: string; readonly why: string } | null
  readonly heads: readonly LinkHead[]
  /** Things found that the customer was asked about: those that wait for an answer first. */
  readonly questions: readonly LinkQuestion[]
  /** Only where the shop shows prices on this job's link. */
  readonly account: LinkAccount | null
}

const plainWords: Readonly<Record<Whereabouts, string>> = {
  expected: 'We are expecting it.',
  'on order': 'It is on order.',
  'in house': 'It is in our shop. We are working on it.',
  away: 'It is at a specialist for part of the work.',
  'waiting for parts': 'Waiting for parts.',
  'waiting for an answer': 'Waiting for your answer.',
  held: 'We stopped work to decide what to do next.',
  finished: 'The work is done. Final inspection is next.',
  released: 'It is ready for you.',
  'handed over': 'You have it.',
  'returned as is': 'We are returning it without further work.',
  'taken off': 'This head is not on the job any more.',
  scrapped: 'It cannot be repaired. Please call us if we have not reached you.',
}

/** What the customer of one job sees. A link that is dead in any way is refused in the same words. */
export async function seeByLink(token: string, now: Date): Promise<LinkView> {
  const client = await db()
  const link = await openLink(client, token, now)
  const papers = await loadDossiers(client, { jobId: link.jobId })
  const shop = await shopOf(client)
  const job = await jobOfLink(client, link)
  const heads: LinkHead[] = []
  const finish = await finishOfJob(client, papers, { now, timeZone: shop.timeZone })
  for (const paper of papers) heads.push(linkHead(paper, await newestSpec(client, paper)))
  return {
    shop: shopBlock(shop),
    timeZone: shop.timeZone,
    locale: shop.locale,
    currency: shop.currency,
    jobNumber: job.number,
    promiseOn: job.promiseOn,
    expected: finish && { on: finish.finish.middleOn, why: longestForCustomer(finish.finish.longest) },
    heads,
    questions: questionsOf(papers, shop),
    account: job.pricesOnLink ? accountFor(await accountOf(client, link.jobId)) : null,
  }
}

const linkHead = ({ visit, label, facts, route }: Dossier, spec: SpecSheetData | null): LinkHead => ({
  visitId: visit.id,
  tag: label,
  casting: visit.head.casting?.name ?? '',
  where: plainWords[whereaboutsOf({ visit, facts, route })],
  marks: progress(route, facts.openHolds.length > 0),
  spec,
})

function questionsOf(papers: readonly Dossier[], shop: Manner): LinkQuestion[] {
  const all = papers.flatMap(({ visit, label }) =>
    visit.findings
      .filter((finding) => isOnLink(finding, visit))
      .map((finding) => ({ ...questionOf(finding, label, shop), photos: photosOf(visit, finding.id) })),
  )
  return [...all.filter(({ answered }) => answered === null), ...all.filter(({ answered }) => answered !== null)]
}

const photosOf = (visit: Dossier['visit'], findingId: string): LinkQuestion['photos'] =>
  visit.photos
    .filter((photo) => photo.findingId === findingId && photo.withdrawnAt === null)
    .toSorted((a, b) => a.at.getTime() - b.at.getTime())
    .map(({ id, caption, widthPx, heightPx }) => ({ id, caption, widthPx, heightPx }))

const accountFor = ({ prices, taxes, totalMinor, paidMinor, balance }: Account): LinkAccount => ({
  prices: prices.map(({ id, text, reason, quantityThousandths, unitMinor }) => ({
    ...{ id, text, reason, quantityThousandths, unitMinor },
  })),
  taxes,
  totalMinor,
  paidMinor,
  balance,
})

/** The spec sheet of one head of the link's own job; a head of another job is as unknown as one that never was. */
export async function specByLink(token: string, visitId: string, now: Date): Promise<StoredPaper> {
  const client = await db()
  await refuseOtherJobs(client, await openLink(client, token, now), visitId)
  return specPaper(client, visitId)
}
