import 'server-only'
import type { Reader } from './db'

/** More than anybody holds against each other. What is left out are a casting's oldest runs: they are of no visit. */
const mostSets = 400

/** Flow readings of these visits and of a casting's reference runs, oldest first, with their points. */
export async function flowSets(reader: Reader, visitIds: readonly string[], castingId: string | null) {
  const newestFirst = await reader.readingSet.findMany({
    where: {
      stepId: 'flow',
      OR: [
        ...(visitIds.length === 0 ? [] : [{ visitId: { in: [...visitIds] } }]),
        ...(castingId === null ? [] : [{ castingId, visitId: null }]),
      ],
    },
    include: { points: true },
    orderBy: [{ eventSeq: 'desc' }, { recordedAt: 'desc' }],
    take: mostSets,
  })
  return newestFirst.toReversed()
}

export type FlowSet = Awaited<ReturnType<typeof flowSets>>[number]

type PairVisit = { readonly id: string; readonly headId: string; readonly jobNumber: string }

/** Every visit of a head and, of the same jobs, those of its mates, oldest first: one statement. */
export const visitsOfPairs = (reader: Reader, headId: string): Promise<PairVisit[]> =>
  reader.$queryRaw<PairVisit[]>`
    SELECT v."id", v."headId", j."number" AS "jobNumber"
    FROM "Visit" v
    JOIN "Job" j ON j."id" = v."jobId"
    WHERE v."pairId" IN (SELECT o."pairId" FROM "Visit" o WHERE o."headId" = ${headId})
    ORDER BY v."createdAt"`

export const castingOfHead = (reader: Reader, headId: string) =>
  reader.castingRecord.findFirst({ where: { heads: { some: { id: headId } } }, select: { id: true, name: true } })

export const tagsOfHeads = (reader: Reader, headIds: readonly string[]) =>
  reader.tagAssignment.findMany({
    where: { headId: { in: [...new Set(headIds)] } },
    select: { headId: true, number: true, to: true },
    orderBy: { from: 'asc' },
  })
