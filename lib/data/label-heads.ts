import 'server-only'
import type { Whereabouts } from '@/lib/core/route/types'
import type { Prisma } from '@/prisma/generated/sqlite/client'
import type { Reader } from './db'

const labelSelect = {
  id: true,
  headId: true,
  position: true,
  side: true,
  job: { select: { number: true } },
  head: {
    select: {
      chamberForm: true,
      casting: { select: { name: true } },
      tags: { orderBy: { from: 'asc' }, select: { number: true, from: true, to: true } },
    },
  },
  // The tick that stands: one that was taken back has a later one after it.
  events: {
    where: { kind: 'tick', stepId: 'check-in' },
    orderBy: { seq: 'desc' },
    take: 1,
    select: { at: true },
  },
} as const satisfies Prisma.VisitSelect

/** A visit as its tag label says it, and since when its head has been here. */
export type LabelVisit = Prisma.VisitGetPayload<{ select: typeof labelSelect }>

/** Under the shop's roof, or booked with a plate on and about to be checked in. */
const here: readonly Whereabouts[] = [
  'expected',
  'in house',
  'waiting for parts',
  'waiting for an answer',
  'held',
  'finished',
  'released',
]

/** The heads that are here and wear a tag, booked last first, so many at the most. */
export const taggedVisitsHere = (reader: Reader, take: number): Promise<LabelVisit[]> =>
  reader.visit.findMany({
    where: { place: { whereabouts: { in: [...here] } }, head: { tags: { some: { to: null } } } },
    orderBy: { id: 'desc' },
    take,
    select: labelSelect,
  })

export const labelVisitsOfJob = (reader: Reader, jobId: string): Promise<LabelVisit[]> =>
  reader.visit.findMany({ where: { jobId }, orderBy: { position: 'asc' }, select: labelSelect })

/** The head that wears each of these numbers now, else the one that wore it last. */
export async function headsOfTags(reader: Reader, numbers: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const worn = await reader.tagAssignment.findMany({
    where: { number: { in: [...numbers] } },
    orderBy: { from: 'asc' },
    select: { number: true, headId: true, to: true },
  })
  const oldFirst = [...worn.filter(({ to }) => to !== null), ...worn.filter(({ to }) => to === null)]
  return new Map(oldFirst.map(({ number, headId }) => [number, headId]))
}

/** The newest visit of each of these heads. */
export async function newestLabelVisits(
  reader: Reader,
  headIds: readonly string[],
): Promise<ReadonlyMap<string, LabelVisit>> {
  const visits = await reader.visit.findMany({
    where: { headId: { in: [...headIds] } },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
    select: labelSelect,
  })
  return new Map(visits.map((visit) => [visit.headId, visit]))
}
