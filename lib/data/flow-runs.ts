import 'server-only'
import type { Reader } from './db'

/** Flow readings of these visits and of a casting's reference runs, oldest first, with their points. */
export const flowSets = (reader: Reader, visitIds: readonly string[], castingId: string | null) =>
  reader.readingSet.findMany({
    where: {
      stepId: 'flow',
      OR: [{ visitId: { in: [...visitIds] } }, ...(castingId === null ? [] : [{ castingId, visitId: null }])],
    },
    include: { points: true },
    orderBy: [{ eventSeq: 'asc' }, { recordedAt: 'asc' }],
  })

export type FlowSet = Awaited<ReturnType<typeof flowSets>>[number]

/** Every visit of a head and, of the same jobs, those of its mates. */
export const visitsOfPairs = (reader: Reader, headId: string) =>
  reader.visit.findMany({
    where: { pair: { visits: { some: { headId } } } },
    select: { id: true, headId: true, job: { select: { number: true } } },
    orderBy: { createdAt: 'asc' },
  })

export const castingOfHead = (reader: Reader, headId: string) =>
  reader.castingRecord.findFirst({ where: { heads: { some: { id: headId } } }, select: { id: true, name: true } })

export const tagsOfHeads = (reader: Reader, headIds: readonly string[]) =>
  reader.tagAssignment.findMany({
    where: { headId: { in: [...new Set(headIds)] } },
    select: { headId: true, number: true, to: true },
    orderBy: { from: 'asc' },
  })
