import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { LineTax } from '@/lib/core/money/price-of'
import type { Reader } from './db'
import { newId } from './ids'
import { addPrices } from './prices'
import type { Row } from './tables'
import { conflictUnless, type Author, type Write } from './write'

const findingInclude = {
  visit: {
    select: {
      id: true,
      jobId: true,
      rulesVersion: true,
      head: { select: { id: true, tags: { where: { to: null }, select: { number: true } } } },
      job: { select: { number: true, customer: { select: { contact: { select: { name: true, phone: true } } } } } },
    },
  },
} as const

const noSuchFinding = (): RefusedError =>
  new RefusedError({ code: 'not-found', message: 'There is no such finding here.' })

export async function findingById(reader: Reader, id: string, otherwise = noSuchFinding) {
  const finding = await reader.finding.findUnique({ where: { id }, include: findingInclude })
  if (finding) return finding
  throw otherwise()
}

export type FindingLine = Pick<
  Row<'Finding'>,
  'id' | 'what' | 'askedAt' | 'askedHow' | 'reportedAt' | 'answer' | 'answeredAt' | 'answeredBy' | 'answeredLinkId'
>

export type FindingRecord = Awaited<ReturnType<typeof findingById>>

export type Asked = {
  readonly priceMinor: number | null
  readonly taxName: string
  readonly taxMillionths: number
  readonly addsWork: string
  readonly askedAt: Date
  readonly askedHow: string
  readonly askedById: string
}
export type Answered = {
  readonly answer: 'yes' | 'no'
  readonly answeredAt: Date
  readonly answeredBy: string
  /** The link it came over; null: it was given to the counter. */
  readonly answeredLinkId: string | null
}

/** Changes a finding that still reads as it did at `version` and was not answered. */
export async function updateFinding(
  ctx: Write<Author>,
  id: string,
  version: number,
  data: Asked | Answered | (Asked & Answered),
): Promise<void> {
  const changed = await ctx.tx.finding.updateMany({
    where: { id, version, answer: null },
    data: { ...data, version: { increment: 1 } },
  })
  conflictUnless(changed, 'this finding')
}

/** Puts the answer that stands aside, with why it changes: the finding is open again, as it was seen at `version`. */
export async function keepEarlierAnswer(
  ctx: Write,
  finding: FindingRecord,
  version: number,
  reason: string,
): Promise<void> {
  const { id: findingId, answer, answeredAt, answeredBy, answeredLinkId } = finding
  const changed = await ctx.tx.finding.updateMany({
    where: { id: findingId, version, answer },
    data: { answer: null, version: { increment: 1 } },
  })
  conflictUnless(changed, 'this finding')
  const was = { findingId, answer: answer ?? '', answeredAt, answeredBy, answeredLinkId }
  await ctx.tx.findingAnswer.create({
    data: { id: newId(ctx.now), ...was, reason, changedAt: ctx.now, changedById: ctx.actor.personId },
  })
}

/** Answers that were changed later, the first one first. */
export const earlierAnswers = (reader: Reader, findingId: string) =>
  reader.findingAnswer.findMany({ where: { findingId }, orderBy: { changedAt: 'asc' }, take: 20 })

/** What a yes adds: its lines of work on the head, but for those already ordered, and its price on the job. */
export async function addFoundWork(
  ctx: Write<Author>,
  finding: { id: string; visitId: string; what: string },
  jobId: string,
  added: { work: readonly string[]; priceMinor: number | null } & LineTax,
): Promise<void> {
  const standing = await ctx.tx.orderedLine.findMany({
    where: { visitId: finding.visitId, endedAt: null },
    select: { work: true },
  })
  const fresh = added.work.filter((work) => !standing.some((line) => line.work === work))
  await ctx.tx.orderedLine.createMany({
    data: fresh.map((work) => ({
      id: newId(ctx.now),
      visitId: finding.visitId,
      work,
      note: finding.what,
      findingId: finding.id,
      createdAt: ctx.now,
    })),
  })
  if (added.priceMinor === null) return
  const { priceMinor: unitMinor, taxName, taxMillionths } = added
  const line = { text: finding.what, quantityThousandths: 1000, unitMinor, taxName, taxMillionths, reason: '' }
  await addPrices(ctx, jobId, [line], { visitId: finding.visitId, findingId: finding.id })
}
