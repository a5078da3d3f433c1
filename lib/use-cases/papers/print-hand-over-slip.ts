import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { formatMoney } from '@/lib/core/money/format-money'
import { db } from '@/lib/data/db'
import { paperJob } from '@/lib/data/papers'
import { accountOf, type Account } from '@/lib/data/prices'
import { shopOf } from '@/lib/data/shop'
import { handOverSlip, type HandOverSlipData } from '@/lib/pdf/hand-over-slip'
import { keptPaper, type Paper } from '@/lib/papers/kept-paper'
import { shopBlock } from '@/lib/dossier/shop-block'
import { loadDossiers, type Dossier } from '@/lib/dossier/dossier'
import { printSetting } from '@/lib/papers/print-spec'
import { castingWords, engineWords, sideWords } from '@/lib/dossier/spec/spec-words'
import { dateWords, type WhenManner } from '@/lib/core/shop/when-words'
import { lineWords } from '@/lib/core/money/price-of'
import { quantityText } from '@/lib/core/money/quantity'
import { lineNet } from '@/lib/core/money/totals'
import { balanceLabel, hasAmount, howPaidWords, paymentKindWords } from '@/lib/words/money'
import { withLogo } from '@/lib/papers/with-logo'

type Manner = WhenManner & { readonly currency: string }

/** What goes home with the heads that were handed over, for those who may see prices. */
export async function printHandOverSlip(actor: Actor, number: string, now: Date): Promise<Paper> {
  must(allow(actor, 'paper.print'))
  must(allow(actor, 'price.see'))
  const client = await db()
  const job = await paperJob(client, number)
  const heads = await loadDossiers(client, { jobId: job.id })
  const gone = heads.filter(({ visit }) => visit.handOver !== null)
  if (gone.length === 0) {
    const message = 'No head of this job is handed over yet. Hand over a head first.'
    throw new RefusedError({ code: 'wrong-state', message })
  }
  const shop = await shopOf(client)
  const data: HandOverSlipData = {
    language: shop.locale,
    shop: shopBlock(shop),
    jobNumber: job.number,
    revision: job.version,
    customer: job.customer.contact?.name ?? '',
    engine: engineWords(job.engine),
    heads: gone.map((head) => headGone(head, shop)),
    stillHere: heads.filter((head) => !gone.includes(head)).map(({ label }) => label),
    ...accountWords(await accountOf(client, job.id), shop),
  }
  return keptPaper(
    { kind: 'hand-over-slip', name: `hand-over-${job.number}.pdf`, data, setting: printSetting(shop, now) },
    withLogo(handOverSlip),
  )
}

function headGone(head: Dossier, shop: WhenManner): HandOverSlipData['heads'][number] {
  const { handOver } = head.visit
  return {
    tag: head.label,
    casting: castingWords(head),
    side: sideWords(handOver?.side || head.visit.side),
    takenBy: handOver?.takenBy ?? '',
    on: handOver ? dateWords(handOver.at, shop) : '',
    partsBack: handOver?.partsBack ?? '',
    note: handOver?.note ?? '',
  }
}

function accountWords(account: Account, shop: Manner) {
  const money = (minor: number): string => formatMoney(minor, shop.currency, shop.locale)
  return {
    lines: account.prices.map((line) => ({
      text: lineWords(line),
      quantity: quantityText(line.quantityThousandths),
      each: money(line.unitMinor),
      amount: money(lineNet(line)),
    })),
    net: money(account.netMinor),
    tax: money(account.taxMinor),
    total: money(account.totalMinor),
    payments: account.payments
      .filter(({ voided }) => voided === null)
      .map(({ kind, method, how, minor, at }) => ({
        what: [paymentKindWords[kind], dateWords(at, shop), howPaidWords(method, how)].join(', '),
        amount: money(kind === 'refund' ? minor : -minor),
      })),
    balanceLabel: balanceLabel(account.balance, 'customer'),
    balance: hasAmount(account.balance) ? money(account.balance.minor) : '',
  }
}
