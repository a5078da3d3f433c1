import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { formatMoney } from '@/lib/core/money/format-money'
import { headName } from '@/lib/core/shop/tag-number'
import { dateWords, dayWords } from '@/lib/core/shop/when-words'
import { db } from '@/lib/data/db'
import { labelVisitsOfJob, type LabelVisit } from '@/lib/data/label-heads'
import { paperJob } from '@/lib/data/papers'
import { accountOf } from '@/lib/data/prices'
import { shopOf } from '@/lib/data/shop'
import { shopBlock } from '@/lib/dossier/shop-block'
import { castingWords, sideWords } from '@/lib/dossier/spec/spec-words'
import { keptPaper, type Paper } from '@/lib/papers/kept-paper'
import { printSetting } from '@/lib/papers/print-spec'
import { withLogo } from '@/lib/papers/with-logo'
import { claimTicket, type ClaimTicketData } from '@/lib/pdf/claim-ticket'
import { balanceLabel, hasAmount } from '@/lib/words/money'

/** What the customer takes along at booking: which heads are here, the promise, and what was paid. */
export async function printClaimTicket(actor: Actor, number: string, now: Date): Promise<Paper> {
  must(allow(actor, 'paper.print'))
  must(allow(actor, 'price.see'))
  const client = await db()
  const job = await paperJob(client, number)
  const shop = await shopOf(client)
  const visits = await labelVisitsOfJob(client, job.id)
  const account = await accountOf(client, job.id)
  const money = (minor: number): string => formatMoney(minor, shop.currency, shop.locale)
  const data: ClaimTicketData = {
    language: shop.locale,
    shop: shopBlock(shop),
    jobNumber: job.number,
    customer: job.customer.contact?.name ?? '',
    on: dateWords(job.createdAt, shop),
    promise: job.promiseOn === null ? '' : dayWords(job.promiseOn, shop),
    // A head that the shop buys was not left here.
    heads: visits.filter(isCustomers).map((visit) => ({
      tag: headName(visit.head.tags, job.number, visit.position),
      casting: castingWords({ visit }),
      side: sideWords(visit.side),
      cameWith: visit.cameWith,
    })),
    total: money(account.totalMinor),
    paid: money(account.paidMinor),
    balanceLabel: balanceLabel(account.balance, 'customer'),
    balance: hasAmount(account.balance) ? money(account.balance.minor) : '',
  }
  return keptPaper(
    { kind: 'claim-ticket', name: `claim-${job.number}.pdf`, data, setting: printSetting(shop, now) },
    withLogo(claimTicket),
  )
}

const isCustomers = ({ source }: LabelVisit): boolean => source === 'customer'
