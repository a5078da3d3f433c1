import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { amountText } from '@/lib/core/money/amount'
import type { WorkId } from '@/lib/core/route/types'
import { db } from '@/lib/data/db'
import { findingById } from '@/lib/data/findings'
import { shopOf } from '@/lib/data/shop'

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
  readonly addsWork: readonly WorkId[]
  readonly answer: 'yes' | 'no' | null
  readonly answeredBy: string
  readonly currency: string
  readonly timeZone: string
  readonly locale: string
}

/** One finding, for whoever asks the customer about it. */
export async function seeFinding(actor: Actor, input: { id: string }): Promise<FindingView> {
  must(allow(actor, 'finding.ask'))
  const client = await db()
  const finding = await findingById(client, input.id)
  const shop = await shopOf(client)
  const { head, job } = finding.visit
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
    price: finding.priceMinor === null ? '' : amountText(finding.priceMinor, shop.currencyExponent),
    addsWork: finding.addsWork.split(',').filter(Boolean) as WorkId[],
    answer: finding.answer as FindingView['answer'],
    answeredBy: finding.answeredBy,
    currency: shop.currency,
    timeZone: shop.timeZone,
    locale: shop.locale,
  }
}
