import 'server-only'
import type { Reader } from './db'
import { pageSize } from './paging'
import { readTables, there, type Row } from './tables'

type Target = Pick<Row<'Visit'>, 'targetCc' | 'targetText' | 'targetUnit'>
/** What a list calls a head: the tag it wears now, '' when it has come off, and its job. */
export type NamedVisit = Target & { readonly tag: string; readonly jobNumber: string }

const tables = {
  Visit: '"id" IN (SELECT "id" FROM "v")',
  Job: '"id" IN (SELECT "jobId" FROM "v")',
  TagAssignment: '"headId" IN (SELECT "headId" FROM "v") AND "to" IS NULL',
}

/** The names of these visits' heads, in one statement. */
export async function namedVisits(reader: Reader, ids: readonly string[]): Promise<(id: string) => NamedVisit> {
  const different = [...new Set(ids)]
  // Of none nothing is found: no id is NULL.
  const marks = different.length === 0 ? 'NULL' : different.map(() => '?').join(', ')
  const scope = `"v" AS (SELECT "id", "headId", "jobId" FROM "Visit" WHERE "id" IN (${marks}))`
  const rows = await readTables(reader, { sql: scope, params: different }, tables)
  const tags = new Map(rows.TagAssignment.map(({ headId, number }) => [headId, number]))
  const numbers = new Map(rows.Job.map(({ id, number }) => [id, number]))
  const named = new Map(
    rows.Visit.map((visit) => [
      visit.id,
      { ...visit, tag: tags.get(visit.headId) ?? '', jobNumber: numbers.get(visit.jobId) ?? '' },
    ]),
  )
  return (id) => there(named.get(id))
}

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

/** Heads on hold, the longest held first. */
export const openHolds = (reader: Reader) =>
  reader.hold.findMany({ where: { decidedAt: null }, orderBy: { openedAt: 'asc' }, take: pageSize })

export const waiversSince = (reader: Reader, since: Date) =>
  reader.waiver.findMany({ where: { at: { gte: since } }, orderBy: { at: 'desc' }, take: pageSize })

/** More than a shop finishes in a month. */
const mostMeasurings = 2000

/** Chambers at the last measuring since then; at most so many measurings. */
export async function finishedSince(reader: Reader, since: Date) {
  const sets = await reader.readingSet.findMany({
    where: { stepId: 'finished', recordedAt: { gte: since }, visitId: { not: null } },
    include: { points: { where: { kind: 'cc' } } },
    orderBy: { recordedAt: 'asc' },
    take: mostMeasurings,
  })
  return sets.flatMap((set) => (set.visitId === null ? [] : [{ visitId: set.visitId, set }]))
}
