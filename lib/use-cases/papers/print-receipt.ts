import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { formatMoney } from '@/lib/core/money/format-money'
import { db } from '@/lib/data/db'
import { paperJob } from '@/lib/data/papers'
import { accountOf, type Account } from '@/lib/data/prices'
import { shopOf } from '@/lib/data/shop'
import { receipt, type ReceiptData } from '@/lib/pdf/receipt'
import { keptPaper, type Paper } from '@/lib/papers/kept-paper'
import { shopBlock } from '@/lib/dossier/shop-block'
import { loadDossiers, type Dossier } from '@/lib/dossier/dossier'
import { printSetting } from '@/lib/papers/print-spec'
import { castingWords, engineWords, sideWords } from '@/lib/dossier/spec/spec-words'
import { dateWords, type WhenManner } from '@/lib/core/shop/when-words'
import { withLogo } from '@/lib/papers/with-logo'

type Manner = WhenManner & { readonly currency: string }

/** What goes home with the heads that were handed over, for those who may see prices. */
export async function printReceipt(actor: Actor, number: string, now: Date): Promise<Paper> {
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
  const data: ReceiptData = {
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
    { kind: 'receipt', name: `receipt-${job.number}.pdf`, data, setting: printSetting(shop, now) },
    withLogo(receipt),
  )
}

function headGone(head: Dossier, shop: WhenManner): ReceiptData['heads'][number] {
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

const kinds = { deposit: 'Deposit', payment: 'Payment', refund: 'Paid back' } as const

function accountWords(account: Account, shop: Manner) {
  const { dueMinor } = account
  const money = (minor: number): string => formatMoney(minor, shop.currency, shop.locale)
  return {
    lines: account.prices.map(({ text, quantity, unitMinor }) => ({
      text,
      quantity: String(quantity),
      each: money(unitMinor),
      amount: money(quantity * unitMinor),
    })),
    net: money(account.netMinor),
    tax: money(account.taxMinor),
    total: money(account.totalMinor),
    payments: account.payments.map(({ kind, how, minor, at }) => ({
      what: [`${kinds[kind]}, ${dateWords(at, shop)}`, how].filter((part) => part !== '').join(', '),
      amount: money(kind === 'refund' ? minor : -minor),
    })),
    balanceLabel: dueMinor > 0 ? 'Still to pay' : dueMinor < 0 ? 'Owed to you' : 'Paid in full',
    balance: money(Math.abs(dueMinor)),
  }
}
