import type { RouteRules } from '@/lib/core/route/rules'
import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { formatAmount } from '@/lib/core/money/amount'
import type { WorkId } from '@/lib/core/route/step-ids'
import { db } from '@/lib/data/db'
import { earlierAnswers, findingById } from '@/lib/data/findings'
import { linksOfJob } from '@/lib/data/links'
import { settingsAt } from '@/lib/data/settings'
import { shopOf } from '@/lib/data/shop'
import { taxField, taxPicks, type TaxPick } from '@/lib/data/tax-rates'
import { shopAddress } from '@/lib/data/shop-address'
import { questionOf } from '@/lib/dossier/question'

export type { FindingRow } from '@/lib/data/finding-row'

export type FindingView = {
  readonly id: string
  readonly version: number
  readonly what: string
  readonly headId: string
  readonly tag: string
  readonly jobNumber: string
  readonly customer: string
  readonly phone: string
  readonly reportedAt: Date
  readonly askedAt: Date | null
  readonly how: string
  readonly price: string
  /** As the form's field has it; '' when none. */
  readonly tax: string
  /** What it is picked from. */
  readonly taxes: readonly TaxPick[]
  /** As the customer reads it: with tax, or that there is none to answer yet. */
  readonly terms: string
  readonly addsWork: readonly WorkId[]
  /** By which the work that a yes adds is named. */
  readonly rules: RouteRules
  readonly answer: 'yes' | 'no' | null
  readonly answeredBy: string
  readonly answeredAt: Date | null
  readonly onLink: boolean
  /** What was answered before, the first one first. */
  readonly earlier: readonly {
    readonly answer: string
    readonly by: string
    readonly at: Date | null
    readonly reason: string
  }[]
  readonly jobId: string
  /** The shop's address, and how many links to the job open now: none of them can be shown again. */
  readonly address: string
  readonly openLinks: number
  readonly currency: string
  readonly timeZone: string
  readonly locale: string
}

/** One finding, for whoever asks the customer about it. */
export async function seeFinding(actor: Actor, input: { id: string; now: Date }): Promise<FindingView> {
  must(allow(actor, 'finding.ask'))
  const client = await db()
  const finding = await findingById(client, input.id)
  const shop = await shopOf(client)
  const { head, job, jobId } = finding.visit
  const taxes = await taxPicks(client)
  const links = await linksOfJob(client, jobId)
  return {
    id: finding.id,
    version: finding.version,
    what: finding.what,
    headId: head.id,
    tag: head.tags[0]?.number ?? '',
    jobNumber: job.number,
    customer: job.customer.contact?.name ?? '',
    phone: job.customer.contact?.phone ?? '',
    reportedAt: finding.reportedAt,
    askedAt: finding.askedAt,
    how: finding.askedHow,
    price: finding.priceMinor === null ? '' : formatAmount(finding.priceMinor, shop.currencyExponent),
    tax: taxField(finding, taxes),
    taxes,
    terms: questionOf(finding, '', shop).terms,
    addsWork: finding.addsWork.split(',').filter(Boolean) as WorkId[],
    rules: (await settingsAt(client, finding.visit.rulesVersion)).values.rules,
    answer: finding.answer as FindingView['answer'],
    answeredBy: finding.answeredBy,
    answeredAt: finding.answeredAt,
    onLink: finding.answeredLinkId !== null,
    earlier: (await earlierAnswers(client, finding.id)).map(({ answer, answeredBy, answeredAt, reason }) => ({
      ...{ answer, by: answeredBy, at: answeredAt, reason },
    })),
    jobId,
    address: shopAddress(),
    openLinks: links.filter((link) => link.revokedAt === null && link.expiresAt > input.now).length,
    currency: shop.currency,
    timeZone: shop.timeZone,
    locale: shop.locale,
  }
}
