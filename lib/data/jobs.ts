import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { Reader, Tx } from './db'
import { conflictUnless, type Write } from './write'

const noSuchJob = (): never => {
  throw new RefusedError({ code: 'not-found', message: 'There is no such job here.' })
}

/** A job, with the calls about it, the newest first. */
export async function jobWithCalls(reader: Reader, number: string) {
  const include = { calls: { orderBy: { at: 'desc' } } } as const
  return (await reader.job.findUnique({ where: { number }, include })) ?? noSuchJob()
}

export async function jobById(reader: Reader, id: string) {
  return (await reader.job.findUnique({ where: { id } })) ?? noSuchJob()
}

export const jobByNumber = async (reader: Reader, number: string): Promise<{ id: string; number: string }> =>
  (await reader.job.findUnique({ where: { number }, select: { id: true, number: true } })) ?? noSuchJob()

/** The number of the job that a head is still here on; null: it has left, or was scrapped. */
export async function jobOfHeadHere(reader: Reader, headId: string): Promise<string | null> {
  const visit = await reader.visit.findFirst({
    where: { headId, handOver: null, scrappedAt: null, takenOffAt: null },
    select: { job: { select: { number: true } } },
  })
  return visit?.job.number ?? null
}

export async function visitIdsOf(reader: Reader, jobId: string): Promise<string[]> {
  const visits = await reader.visit.findMany({ where: { jobId }, select: { id: true }, orderBy: { position: 'asc' } })
  return visits.map((visit) => visit.id)
}

export type JobChange = {
  readonly promiseOn: string | null
  readonly urgent: boolean
  readonly note: string
  readonly partsPlace: string
  readonly wanted: string
}

/** Changes a job that still reads as it did at `version`. */
export async function updateJob(ctx: Write, jobId: string, version: number, data: Partial<JobChange>): Promise<void> {
  const changed = await ctx.tx.job.updateMany({
    where: { id: jobId, version },
    data: { ...data, version: { increment: 1 } },
  })
  conflictUnless(changed, 'this job')
}

/** Marks a job as cancelled that still reads as it did at `version`. */
export async function cancelJobRow(ctx: Write, jobId: string, version: number, reason: string): Promise<void> {
  const changed = await ctx.tx.job.updateMany({
    where: { id: jobId, version, cancelledAt: null },
    data: { cancelledAt: ctx.now, cancelReason: reason, version: { increment: 1 } },
  })
  conflictUnless(changed, 'this job')
}

export async function addCall(ctx: Write, jobId: string, id: string, text: string): Promise<void> {
  await ctx.tx.callEntry.create({ data: { id, jobId, at: ctx.now, byId: ctx.actor.personId, text } })
}

/** What was noted on a customer's jobs in free words, where people are named: notes, and whose the parts are. */
export async function blankJobNotes(tx: Tx, customerId: string): Promise<void> {
  const version = { increment: 1 }
  await tx.job.updateMany({ where: { customerId, NOT: { note: '' } }, data: { note: '', version } })
  await tx.visit.updateMany({ where: { job: { customerId }, NOT: { ownedBy: '' } }, data: { ownedBy: '', version } })
}
