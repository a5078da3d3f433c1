import type { MoneyFacts, MoneyPaperKind } from '@/lib/core/money/paper-facts'
import type { Totals } from '@/lib/core/money/totals'
import { headName } from '@/lib/core/shop/tag-number'
import type { Tx } from '@/lib/data/db'
import { jobOnPaper, nextPaperNumber } from '@/lib/data/money-papers'
import type { Account } from '@/lib/data/prices'
import { shopOf } from '@/lib/data/shop'
import { shopBlock } from '../shop-block'
import { engineWords } from '../spec/spec-words'

type Own = Partial<Pick<MoneyFacts, 'lines' | 'of' | 'reason' | 'payment'>>
type Sums = Pick<Totals, 'taxes' | 'netMinor' | 'taxMinor' | 'totalMinor'>

/** What a paper of a job says, with its number, which is taken here. `account`: how the job stands once it is written. */
export async function paperFacts(
  tx: Tx,
  jobId: string,
  kind: MoneyPaperKind,
  now: Date,
  { account, sums, ...own }: Own & { readonly account: Account; readonly sums: Sums },
): Promise<{ readonly facts: MoneyFacts; readonly points: { readonly jobId: string; readonly customerId: string } }> {
  const job = await jobOnPaper(tx, jobId)
  const shop = await shopOf(tx)
  const { contact } = job.customer
  const facts: MoneyFacts = {
    kind,
    number: await nextPaperNumber(tx, kind),
    at: now.toISOString(),
    ...{ locale: shop.locale, timeZone: shop.timeZone, currency: shop.currency },
    shop: shopBlock(shop),
    jobNumber: job.number,
    customer: { name: contact?.name ?? '', address: contact?.address ?? '' },
    engine: engineWords(job.engine),
    heads: job.visits.map(({ head, position }) => headName(head.tags, job.number, position)),
    ...{ taxes: sums.taxes, netMinor: sums.netMinor, taxMinor: sums.taxMinor, totalMinor: sums.totalMinor },
    paidMinor: account.paidMinor,
    balance: account.balance,
    lines: own.lines ?? [],
    of: own.of ?? '',
    reason: own.reason ?? '',
    payment: own.payment ?? null,
  }
  return { facts, points: { jobId, customerId: job.customerId } }
}
