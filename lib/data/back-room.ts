import 'server-only'
import type { Reader } from './db'
import { pageSize } from './paging'

const head = { select: { tags: { where: { to: null }, select: { number: true } } } } as const
const visitName = { select: { id: true, head, job: { select: { number: true } } } } as const

/** The tag a head wears now; '' when it has come off. */
const tagOf = (visit: { head: { tags: { number: string }[] } }): string => visit.head.tags[0]?.number ?? ''

export type Longest = { readonly station: string; readonly tag: string; readonly label: string; readonly since: Date }

/** At each station the head on which nothing has been done for longest, of those that can be worked on. */
export async function longestWaits(reader: Reader): Promise<Map<string, Longest>> {
  const rows = await reader.$queryRaw<
    (Omit<Longest, 'since' | 'tag'> & { tag: string | null; since: Date | string })[]
  >`
    SELECT "station", "label", "tag", "since" FROM (
      SELECT w."station", w."label", w."since", t."number" AS "tag",
        ROW_NUMBER() OVER (PARTITION BY w."station" ORDER BY w."since", w."place") AS "rank"
      FROM (
        SELECT s."station", s."label", s."place", s."visitId",
          (SELECT e."at" FROM "VisitEvent" e WHERE e."visitId" = s."visitId" ORDER BY e."seq" DESC LIMIT 1) AS "since"
        FROM "RouteStep" s WHERE s."queue" IN ('ready', 'started')
      ) w
      JOIN "Visit" v ON v."id" = w."visitId"
      LEFT JOIN "TagAssignment" t ON t."headId" = v."headId" AND t."to" IS NULL
      WHERE w."since" IS NOT NULL
    ) r WHERE "rank" = 1`
  return new Map(
    rows.map(({ station, label, tag, since }) => [station, { station, label, tag: tag ?? '', since: new Date(since) }]),
  )
}

export type HeldHead = {
  readonly holdId: string
  readonly tag: string
  readonly jobNumber: string
  readonly reason: string
  readonly openedAt: Date
  readonly openedById: string
}

export async function heldHeads(reader: Reader): Promise<HeldHead[]> {
  const holds = await reader.hold.findMany({
    where: { decidedAt: null },
    include: { visit: visitName },
    orderBy: { openedAt: 'asc' },
    take: pageSize,
  })
  return holds.map(({ id, visit, reason, openedAt, openedById }) => ({
    holdId: id,
    tag: tagOf(visit),
    jobNumber: visit.job.number,
    reason,
    openedAt,
    openedById,
  }))
}

export type WaiverLine = {
  readonly id: string
  readonly tag: string
  readonly what: string
  readonly reason: string
  readonly at: Date
  readonly byId: string
}

export async function waiversSince(reader: Reader, since: Date): Promise<WaiverLine[]> {
  const waivers = await reader.waiver.findMany({
    where: { at: { gte: since } },
    include: { visit: visitName },
    orderBy: { at: 'desc' },
    take: pageSize,
  })
  return waivers.map(({ id, visit, what, reason, at, byId }) => {
    return { id, tag: tagOf(visit), what, reason, at, byId }
  })
}

/** More than a shop finishes in a month. */
const mostMeasurings = 2000

/** Chambers at the last measuring since then, with what the head was to come to; at most so many measurings. */
export async function finishedSince(reader: Reader, since: Date) {
  const sets = await reader.readingSet.findMany({
    where: { stepId: 'finished', recordedAt: { gte: since }, visitId: { not: null } },
    include: {
      points: { where: { kind: 'cc' } },
      visit: { select: { id: true, head, targetCc: true, targetText: true, targetUnit: true } },
    },
    orderBy: { recordedAt: 'asc' },
    take: mostMeasurings,
  })
  return sets.flatMap(({ visit, ...set }) =>
    visit === null ? [] : [{ set, visitId: visit.id, tag: tagOf(visit), target: visit }],
  )
}
