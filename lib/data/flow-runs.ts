import 'server-only'
import type { Reader } from './db'

/** Flow readings of these visits and of a casting's reference runs, oldest first, with their points. */
export const flowSets = (reader: Reader, visitIds: readonly string[], castingId: string | null) =>
  reader.readingSet.findMany({
    where: {
      stepId: 'flow',
      OR: [
        ...(visitIds.length === 0 ? [] : [{ visitId: { in: [...visitIds] } }]),
        ...(castingId === null ? [] : [{ castingId, visitId: null }]),
      ],
    },
    include: { points: true },
    orderBy: [{ eventSeq: 'asc' }, { recordedAt: 'asc' }],
  })

export type FlowSet = Awaited<ReturnType<typeof flowSets>>[number]

/** Every visit of a head and, of the same jobs, those of its mates. */
export async function visitsOfPairs(reader: Reader, headId: string) {
  const own = await reader.visit.findMany({ where: { headId }, select: { pairId: true } })
  return reader.visit.findMany({
    where: { pairId: { in: own.map(({ pairId }) => pairId) } },
    select: { id: true, headId: true, job: { select: { number: true } } },
    orderBy: { createdAt: 'asc' },
  })
}

export const castingOfHead = (reader: Reader, headId: string) =>
  reader.castingRecord.findFirst({ where: { heads: { some: { id: headId } } }, select: { id: true, name: true } })

export const tagsOfHeads = (reader: Reader, headIds: readonly string[]) =>
  reader.tagAssignment.findMany({
    where: { headId: { in: [...new Set(headIds)] } },
    select: { headId: true, number: true, to: true },
    orderBy: { from: 'asc' },
  })
