import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import { headName } from '@/lib/core/shop/tag-number'
import type { Prisma } from '@/prisma/generated/sqlite/client'
import type { Reader } from './db'
import { visitInclude } from './facts'

const paperInclude = {
  ...visitInclude,
  job: { include: { ...visitInclude.job.include, customer: { include: { contact: true } } } },
} as const satisfies Prisma.VisitInclude

/** A visit with whom it is for: what a paper is made from. */
export type PaperVisit = Prisma.VisitGetPayload<{ include: typeof paperInclude }>

const none = (what: string): never => {
  throw new RefusedError({ code: 'not-found', message: `There is no such ${what} here.` })
}

export async function paperVisit(reader: Reader, id: string): Promise<PaperVisit> {
  return (await reader.visit.findUnique({ where: { id }, include: paperInclude })) ?? none('head')
}

/** All heads of a job, in their order. */
export async function paperVisitsOfJob(reader: Reader, jobId: string): Promise<PaperVisit[]> {
  return reader.visit.findMany({ where: { jobId }, include: paperInclude, orderBy: { position: 'asc' } })
}

export async function paperJob(reader: Reader, number: string) {
  const job = await reader.job.findUnique({
    where: { number },
    include: { customer: { include: { contact: true } }, engine: { include: { figures: true } } },
  })
  return job ?? none('job')
}

/** Every visit of these pairs with the tag its head wears, in their order. */
export async function tagsOfPairs(reader: Reader, pairIds: readonly string[]) {
  const visits = await reader.visit.findMany({
    where: { pairId: { in: [...new Set(pairIds)] } },
    orderBy: { position: 'asc' },
    select: {
      id: true,
      pairId: true,
      position: true,
      job: { select: { number: true } },
      head: { select: { tags: { orderBy: { from: 'asc' } } } },
    },
  })
  return visits.map(({ id, pairId, position, job, head }) => ({
    visitId: id,
    pairId,
    tag: headName(head.tags, job.number, position),
  }))
}

export async function paperOrder(reader: Reader, id: string) {
  const order = await reader.outsideOrder.findUnique({
    where: { id },
    include: { vendor: true, redoOf: { select: { number: true } }, visits: { orderBy: { id: 'asc' } } },
  })
  return order ?? none('outside order')
}

export const paperVisits = (reader: Reader, ids: readonly string[]): Promise<PaperVisit[]> =>
  reader.visit.findMany({ where: { id: { in: [...ids] } }, include: paperInclude, orderBy: { position: 'asc' } })
