import 'server-only'
import type { Reader } from './db'

/** One casting with all that the bench reckons with; null: there is none, or it is retired. */
export const benchCasting = (reader: Reader, id: string) =>
  reader.castingRecord.findFirst({
    where: { id, retiredAt: null },
    include: { figures: true, outlines: true, variants: { where: { retiredAt: null }, orderBy: { name: 'asc' } } },
  })

/** How long the newest heads were out, with what was done to them. */
export const lastOut = (reader: Reader) =>
  reader.$queryRaw<{ receivedAt: Date; sentAt: Date | null; scope: string }[]>`
    SELECT v."receivedAt", o."sentAt", o."scope"
    FROM "OutsideOrderVisit" v JOIN "OutsideOrder" o ON o."id" = v."orderId"
    WHERE v."receivedAt" IS NOT NULL
    ORDER BY v."receivedAt" DESC LIMIT 200`

export const estimateById = (reader: Reader, id: string) => reader.estimate.findUnique({ where: { id } })

export const estimateNumber = (reader: Reader, id: string) =>
  reader.estimate.findUnique({ where: { id }, select: { id: true, number: true } })

/** The jobs that were booked from a kept answer, the first ones. */
export const jobsOfEstimate = (reader: Reader, estimateId: string) =>
  reader.job.findMany({ where: { estimateId }, select: { number: true }, orderBy: { id: 'asc' }, take: 20 })

/** The newest kept answers. */
export const lastEstimates = (reader: Reader) =>
  reader.estimate.findMany({
    select: { id: true, number: true, forWhom: true, answer: true, createdAt: true },
    orderBy: { number: 'desc' },
    take: 20,
  })
