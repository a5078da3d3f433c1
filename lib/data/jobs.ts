import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { Prisma } from '@/prisma/generated/sqlite/client'
import type { Reader } from './db'
import { beginsWith } from './text-range'
import { conflictUnless, type Write } from './write'

const wornTag = { where: { to: null }, select: { number: true } } as const
/** Steps that somebody could be at now. */
const openStep = { queue: { in: ['ready', 'started'] } }

/** What holds a head up: asked wherever a list says why. */
const whySelect = {
  place: { select: { whereabouts: true, changedAt: true } },
  steps: { where: openStep, orderBy: { place: 'asc' }, select: { label: true, station: true } },
  holds: { where: { decidedAt: null }, select: { reason: true } },
  waits: { where: { arrivedAt: null }, select: { what: true, promisedOn: true } },
  findings: { where: { answer: null }, select: { id: true, what: true } },
  supply: {
    where: { arrivedAt: null, line: { order: { endedAt: null } } },
    select: { line: { select: { order: { select: { promisedOn: true, vendor: { select: { name: true } } } } } } },
  },
  outside: {
    where: { receivedAt: null, order: { sentAt: { not: null } } },
    select: { order: { select: { promisedOn: true, vendor: { select: { name: true } } } } },
  },
} as const satisfies Prisma.VisitSelect

const pageInclude = {
  customer: { include: { contact: true } },
  engine: { include: { figures: true } },
  calls: { orderBy: { at: 'desc' } },
  pairs: {
    include: { plans: { orderBy: { number: 'desc' }, take: 1, include: { acceptances: true } } },
    orderBy: { id: 'asc' },
  },
  visits: {
    orderBy: { position: 'asc' },
    include: {
      ...whySelect,
      head: {
        select: {
          id: true,
          stamp: true,
          marks: true,
          material: true,
          casting: { select: { name: true } },
          tags: { orderBy: { from: 'desc' }, select: { number: true, to: true } },
        },
      },
      ordered: { where: { endedAt: null }, orderBy: [{ createdAt: 'asc' }, { id: 'asc' }] },
      steps: { orderBy: { place: 'asc' } },
    },
  },
} as const satisfies Prisma.JobInclude

export type JobRecord = Prisma.JobGetPayload<{ include: typeof pageInclude }>

const noSuchJob = (): never => {
  throw new RefusedError({ code: 'not-found', message: 'There is no such job here.' })
}

/** Everything the job's page shows but its prices, which are asked for only for those who may see them. */
export async function jobRecord(reader: Reader, number: string): Promise<JobRecord> {
  return (await reader.job.findUnique({ where: { number }, include: pageInclude })) ?? noSuchJob()
}

export async function jobById(reader: Reader, id: string) {
  return (await reader.job.findUnique({ where: { id } })) ?? noSuchJob()
}

export const jobByNumber = async (reader: Reader, number: string): Promise<{ id: string; number: string }> =>
  (await reader.job.findUnique({ where: { number }, select: { id: true, number: true } })) ?? noSuchJob()

/** The number of the job that a head is still here on; null: it has left, or was scrapped. */
export async function jobOfHeadHere(reader: Reader, headId: string): Promise<string | null> {
  const visit = await reader.visit.findFirst({
    where: { headId, handOver: null, scrappedAt: null },
    select: { job: { select: { number: true } } },
  })
  return visit?.job.number ?? null
}

export async function visitIdsOf(reader: Reader, jobId: string): Promise<string[]> {
  const visits = await reader.visit.findMany({ where: { jobId }, select: { id: true }, orderBy: { position: 'asc' } })
  return visits.map((visit) => visit.id)
}

const foundSelect = {
  number: true,
  promiseOn: true,
  createdAt: true,
  customer: { select: { contact: { select: { name: true, phone: true } } } },
  visits: {
    orderBy: { position: 'asc' },
    select: { place: { select: { whereabouts: true } }, head: { select: { tags: wornTag } } },
  },
} as const satisfies Prisma.JobSelect

export type FoundJob = Prisma.JobGetPayload<{ select: typeof foundSelect }>

/** Jobs of these customers, and those whose number begins so: the newest first. */
export async function jobsFound(
  reader: Reader,
  by: { customerIds: readonly string[]; number: string },
  take: number,
): Promise<FoundJob[]> {
  const byNumber = /^\d{2}-\d{0,6}$/.test(by.number) ? [{ number: beginsWith(by.number) }] : []
  return reader.job.findMany({
    where: { OR: [{ customerId: { in: [...by.customerIds] } }, ...byNumber] },
    orderBy: { number: 'desc' },
    take,
    select: foundSelect,
  })
}

export type JobChange = {
  readonly promiseOn: string | null
  readonly urgent: boolean
  readonly note: string
  readonly partsPlace: string
}

/** Changes a job that still reads as it did at `version`. */
export async function updateJob(ctx: Write, jobId: string, version: number, data: Partial<JobChange>): Promise<void> {
  const changed = await ctx.tx.job.updateMany({
    where: { id: jobId, version },
    data: { ...data, version: { increment: 1 } },
  })
  conflictUnless(changed, 'this job')
}

export async function addCall(ctx: Write, jobId: string, id: string, text: string): Promise<void> {
  await ctx.tx.callEntry.create({ data: { id, jobId, at: ctx.now, byId: ctx.actor.personId, text } })
}
