import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { MoneyFacts, MoneyPaperKind } from '@/lib/core/money/paper-facts'
import { nextNumber } from './counters'
import type { Reader, Tx } from './db'
import { addFileRow, type StoredFile } from './files'
import { newId } from './ids'
import { moneyFacts } from './stored/money-facts'
import type { Row } from './tables'
import type { Write } from './write'

const letters: Readonly<Record<MoneyPaperKind, string>> = { invoice: 'INV', 'credit-note': 'CN', receipt: 'R' }

/** "INV-0012": each kind counts by itself. A change that is not kept gives its number back, so that there are no gaps. */
export const nextPaperNumber = async (tx: Tx, kind: MoneyPaperKind): Promise<string> =>
  `${letters[kind]}-${String(await nextNumber(tx, kind)).padStart(4, '0')}`

type Points = { readonly jobId: string; readonly customerId: string }
type Of = { readonly invoiceId?: string; readonly paymentId?: string }

/** Freezes a paper; `of`: the invoice of a credit note, the payment of a receipt. */
export async function addMoneyPaper(ctx: Write, { jobId, customerId }: Points, facts: MoneyFacts, of: Of = {}) {
  const id = newId(ctx.now)
  const { kind, number, netMinor, taxMinor, totalMinor, reason } = facts
  await ctx.tx.moneyPaper.create({
    data: {
      ...{ id, kind, number, jobId, customerId, netMinor, taxMinor, totalMinor, reason },
      invoiceId: of.invoiceId ?? null,
      paymentId: of.paymentId ?? null,
      facts: moneyFacts.write(facts),
      at: ctx.now,
      byId: ctx.actor.personId,
    },
  })
  return id
}

/** A paper with what it says; refused when there is none. */
export async function moneyPaperById(reader: Reader, id: string): Promise<Row<'MoneyPaper'> & { said: MoneyFacts }> {
  const paper = await reader.moneyPaper.findUnique({ where: { id } })
  if (!paper) throw new RefusedError({ code: 'not-found', message: 'There is no such paper here.' })
  return { ...paper, said: moneyFacts.read(paper.facts, paper.id) }
}

/** The credit notes of an invoice, the first one first. */
export async function creditsOf(reader: Reader, invoiceId: string): Promise<MoneyFacts[]> {
  const notes = await reader.moneyPaper.findMany({ where: { invoiceId }, orderBy: [{ at: 'asc' }, { id: 'asc' }] })
  return notes.map(({ id, facts }) => moneyFacts.read(facts, id))
}

/** Where the bytes of a paper are; null: they were not made yet. */
export const paperFile = async (reader: Reader, paperId: string): Promise<string | null> =>
  (await reader.moneyPaperFile.findUnique({ where: { paperId }, select: { sha256: true } }))?.sha256 ?? null

/** Keeps the bytes that were made for a paper; those that were there first stay. */
export async function addPaperFile(tx: Tx, paperId: string, file: StoredFile, now: Date): Promise<void> {
  if ((await paperFile(tx, paperId)) !== null) return
  await addFileRow(tx, file, 'application/pdf', now)
  await tx.moneyPaperFile.create({ data: { paperId, sha256: file.sha256, at: now } })
}

/** A job with what its money papers say of it. */
export async function jobOnPaper(reader: Reader, jobId: string) {
  const job = await reader.job.findUnique({
    where: { id: jobId },
    include: {
      customer: { include: { contact: true } },
      engine: { include: { figures: true } },
      visits: {
        orderBy: { position: 'asc' },
        select: { position: true, head: { select: { tags: { where: { to: null }, select: { number: true } } } } },
      },
    },
  })
  if (!job) throw new RefusedError({ code: 'not-found', message: 'There is no such job here.' })
  return job
}
