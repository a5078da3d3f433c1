import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { Reader } from './db'
import { newId } from './ids'
import { conflictUnless, type Write } from './write'

const findingInclude = {
  visit: {
    select: {
      id: true,
      jobId: true,
      head: { select: { id: true, tags: { where: { to: null }, select: { number: true } } } },
      job: { select: { number: true, customer: { select: { contact: { select: { name: true, phone: true } } } } } },
    },
  },
} as const

export async function findingById(reader: Reader, id: string) {
  const finding = await reader.finding.findUnique({ where: { id }, include: findingInclude })
  if (finding) return finding
  throw new RefusedError({ code: 'not-found', message: 'There is no such finding here.' })
}

export type FindingChange = {
  readonly priceMinor: number | null
  readonly addsWork: string
  readonly askedAt: Date
  readonly askedHow: string
  readonly askedById: string
  readonly answer?: 'yes' | 'no'
  readonly answeredAt?: Date
  readonly answeredBy?: string
}

/** Changes a finding that still reads as it did at `version` and was not answered. */
export async function updateFinding(w: Write, id: string, version: number, data: FindingChange): Promise<void> {
  const changed = await w.tx.finding.updateMany({
    where: { id, version, answer: null },
    data: { ...data, version: { increment: 1 } },
  })
  conflictUnless(changed, 'this finding')
}

/** What a yes adds: its lines of work on the head, but for those already ordered, and its price on the job. */
export async function addFoundWork(
  w: Write,
  finding: { id: string; visitId: string; what: string },
  jobId: string,
  added: { work: readonly string[]; priceMinor: number | null; taxBasisPoints: number },
): Promise<void> {
  const standing = await w.tx.orderedLine.findMany({
    where: { visitId: finding.visitId, endedAt: null },
    select: { work: true },
  })
  const fresh = added.work.filter((work) => !standing.some((line) => line.work === work))
  await w.tx.orderedLine.createMany({
    data: fresh.map((work) => ({
      id: newId(w.now),
      visitId: finding.visitId,
      work,
      note: finding.what,
      findingId: finding.id,
      createdAt: w.now,
    })),
  })
  if (added.priceMinor === null) return
  await w.tx.priceLine.create({
    data: {
      id: newId(w.now),
      jobId,
      visitId: finding.visitId,
      findingId: finding.id,
      text: finding.what,
      quantity: 1,
      unitMinor: added.priceMinor,
      taxBasisPoints: added.taxBasisPoints,
      createdAt: w.now,
    },
  })
}
