import 'server-only'
import type { KeptSet } from '@/lib/core/readings/effective'
import type { Reader } from './db'
import { pageOfRows, pageSize } from './paging'
import { byId, readTables, rowsByOwner, there, type Row, type Rows } from './tables'

/** Of the calendar: from the first moment on, before the last. */
export type Period = { readonly from: Date; readonly to: Date }
export type ListsAsked = { readonly month: Period; readonly toleranceCc: number; readonly page: number }

/** One line of one of the three lists, with who did it; a measuring is said without. */
type Listed = {
  readonly list: 'hold' | 'waiver' | 'measuring'
  readonly id: string
  readonly visitId: string
  readonly by: string | null
}

/** Measurings on one page of those out of tolerance: each may have a line for every chamber of a head. */
const measuringsOnPage = 25

/** Decimals are not exact in binary: 60.5 is still within 0.5 of 60. */
export const roundingCc = 1e-9

/**
 * A page of what is on hold, the longest held first; of the month's waivers, and of the month's last measurings with a
 * chamber that may be out of tolerance, the newest first. One statement.
 *
 * A chamber that was read several times counts by the mean, which is never further off than the furthest of them: so
 * whatever repeats or corrects another is looked at, whatever it says. The list is walked from its newest end, only until
 * the page is full.
 */
async function listed(reader: Reader, { month, toleranceCc, page }: ListsAsked): Promise<Listed[]> {
  const skip = (size: number): number => (page - 1) * size
  return reader.$queryRaw<Listed[]>`
    SELECT 'hold' AS "list", ROW_NUMBER() OVER (ORDER BY h."openedAt", h."id") AS "place", h."id", h."visitId",
      p."name" AS "by"
    FROM (SELECT "id", "visitId", "openedById", "openedAt" FROM "Hold" WHERE "decidedAt" IS NULL
      ORDER BY "openedAt", "id" LIMIT ${pageSize + 1} OFFSET ${skip(pageSize)}) h
    LEFT JOIN "Person" p ON p."id" = h."openedById"
    UNION ALL
    SELECT 'waiver', ROW_NUMBER() OVER (ORDER BY w."at" DESC, w."id" DESC), w."id", w."visitId", p."name"
    FROM (SELECT "id", "visitId", "byId", "at" FROM "Waiver" WHERE "at" >= ${month.from} AND "at" < ${month.to}
      ORDER BY "at" DESC, "id" DESC LIMIT ${pageSize + 1} OFFSET ${skip(pageSize)}) w
    LEFT JOIN "Person" p ON p."id" = w."byId"
    UNION ALL
    SELECT 'measuring', ROW_NUMBER() OVER (ORDER BY m."recordedAt" DESC, m."id" DESC), m."id", m."visitId", NULL
    FROM (SELECT s."id", s."visitId", s."recordedAt" FROM "ReadingSet" s JOIN "Visit" v ON v."id" = s."visitId"
      WHERE s."stepId" = 'finished' AND s."recordedAt" >= ${month.from} AND s."recordedAt" < ${month.to}
        AND EXISTS (SELECT 1 FROM "Reading" r WHERE r."setId" = s."id" AND r."kind" = 'cc'
          AND (ABS(r."value" - v."targetCc") > ${toleranceCc + roundingCc} OR r."repeat" IS NOT NULL
            OR r."correctsId" IS NOT NULL))
      ORDER BY s."recordedAt" DESC, s."id" DESC
      LIMIT ${measuringsOnPage + 1} OFFSET ${skip(measuringsOnPage)}) m
    ORDER BY "list", "place"`
}

// A condition inside CASE cannot use an index: by that of the step all finished heads would be read, not the few of the page.
const measured = `"visitId" IN (SELECT "id" FROM "m") AND CASE WHEN "stepId" = 'finished' THEN 1 END = 1`
const tables = {
  Hold: '"id" IN (SELECT "id" FROM "h")',
  Waiver: '"id" IN (SELECT "id" FROM "w")',
  ReadingSet: measured,
  Reading: `"setId" IN (SELECT "id" FROM "ReadingSet" WHERE ${measured}) AND "kind" = 'cc'`,
  Visit: '"id" IN (SELECT "id" FROM "v")',
  Job: '"id" IN (SELECT "jobId" FROM "v")',
  TagAssignment: '"headId" IN (SELECT "headId" FROM "v") AND "to" IS NULL',
}

const rowsWithId = (name: string, table: string, ids: readonly string[], columns = '"id"'): string =>
  `"${name}" AS (SELECT ${columns} FROM "${table}" WHERE "id" IN (${ids.length === 0 ? 'NULL' : ids.map(() => '?').join(', ')}))`

type Target = Pick<Row<'Visit'>, 'targetCc' | 'targetText' | 'targetUnit'>
/** What a list calls a head: the tag it wears now, '' when it has come off, and its job. */
export type NamedVisit = Target & { readonly tag: string; readonly jobNumber: string }
export type MeasuredSet = KeptSet & { readonly visitId: string | null; readonly recordedAt: Date }

/** A page of the three lists, in two statements. */
export async function backRoomLists(reader: Reader, asked: ListsAsked) {
  const all = await listed(reader, asked)
  const holds = pageOfRows(all.filter(({ list }) => list === 'hold'))
  const waivers = pageOfRows(all.filter(({ list }) => list === 'waiver'))
  const measurings = pageOfRows(
    all.filter(({ list }) => list === 'measuring'),
    measuringsOnPage,
  )
  const by = new Map(all.map(({ id, by }) => [id, by ?? '']))
  const shown = [...holds.rows, ...waivers.rows, ...measurings.rows]
  const ids = (lines: readonly Listed[]): string[] => lines.map(({ id }) => id)
  const visitIdsOf = (lines: readonly Listed[]): string[] => [...new Set(lines.map(({ visitId }) => visitId))]
  const [h, w, m, v] = [ids(holds.rows), ids(waivers.rows), visitIdsOf(measurings.rows), visitIdsOf(shown)]
  const sql = [
    rowsWithId('h', 'Hold', h),
    rowsWithId('w', 'Waiver', w),
    rowsWithId('m', 'Visit', m),
    rowsWithId('v', 'Visit', v, '"id", "headId", "jobId"'),
  ].join(', ')
  const rows = await readTables(reader, { sql, params: [...h, ...w, ...m, ...v] }, tables)
  return {
    holds: inOrder(h, rows.Hold),
    waivers: inOrder(w, rows.Waiver),
    /** The measurings of the page, and all that was measured last on their heads. */
    measurings: { ids: ids(measurings.rows), sets: setsOf(rows.ReadingSet, rows.Reading) },
    more: holds.more || waivers.more || measurings.more,
    by: (id: string): string => by.get(id) ?? '',
    nameOf: namesOf(rows),
  }
}

function inOrder<T extends { readonly id: string }>(ids: readonly string[], rows: readonly T[]): T[] {
  const found = byId(rows)
  return ids.map((id) => there(found.get(id)))
}

/** Ids are in the order of their making. */
const inOrderOfMaking = (a: { readonly id: string }, b: { readonly id: string }): number => (a.id < b.id ? -1 : 1)

function setsOf(sets: readonly Row<'ReadingSet'>[], points: readonly Row<'Reading'>[]): MeasuredSet[] {
  const inSet = rowsByOwner(points.toSorted(inOrderOfMaking), ({ setId }) => setId)
  return sets.map((set) => ({ ...set, points: inSet.get(set.id) ?? [] }))
}

function namesOf(
  rows: Pick<Rows<'Visit' | 'Job' | 'TagAssignment'>, 'Visit' | 'Job' | 'TagAssignment'>,
): (visitId: string) => NamedVisit {
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
