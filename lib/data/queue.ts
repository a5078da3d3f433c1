import 'server-only'
import type { Lack } from '@/lib/core/route/codes'
import type { Rework } from '@/lib/core/route/head-marks'
import type { Station, StepId, StepKey } from '@/lib/core/route/step-ids'
import type { RouteStep } from '@/lib/core/route/types'
import type { Reader } from './db'
import { pageSize, type Paged } from './paging'
import { routeStepOf } from './visits'

/** One open step at a station with what its line in the queue says. */
export type StationRow = {
  readonly visitId: string
  readonly headId: string
  readonly jobNumber: string
  readonly position: number
  readonly promiseOn: string | null
  readonly urgent: boolean
  /** The tag the head wears; null: none. */
  readonly tag: string | null
  readonly casting: string | null
  readonly whereabouts: string | null
  /** Rack location; '' where nobody said. */
  readonly rackPlace: string
  readonly queue: string
  /** Why it is on hold: the oldest open hold; null: none is. */
  readonly holdReason: string | null
  /** The oldest finding without an answer; null: none is. */
  readonly findingWhat: string | null
  readonly comebackOfId: string | null
  readonly comebackCause: string
  readonly comebackPays: string
  /** The day of a supplier's or a vendor's promise for this head, and of its parts; null: there is none. */
  readonly arrivesOn: string | null
  readonly partsOn: string | null
  /** Steps of this head that somebody has started. */
  readonly started: readonly StepKey[]
  readonly timeZone: string
  readonly locale: string
  /** Its place on the job while its mate is on hold; null: no mate is. */
  readonly matePosition: number | null
  readonly mateTag: string | null
  readonly step: RouteStep
  /** What was measured on the head and is out of tolerance. */
  readonly out: readonly Lack[]
  readonly rework: readonly Rework[]
}

type Row = Omit<StationRow, 'step' | 'out' | 'rework' | 'started'> &
  Parameters<typeof routeStepOf>[0] & { readonly started: string | null }

/**
 * A page of a station's queue in one statement: what is started or ready first, then by promise. Of the steps to come the
 * first of each head, and only while nothing of it can be worked on at this station.
 * A condition inside CASE cannot use an index: without it SQLite reads all steps of the station, or all open holds, for
 * each line instead of the few of the head.
 */
export async function stationRows(reader: Reader, station: Station, page: number): Promise<Paged<StationRow>> {
  const rows = await reader.$queryRaw<Row[]>`
    SELECT s."stepId", s."occurrence", s."orderKey", s."label", s."station", s."state", s."queue", s."detail",
      v."id" AS "visitId", v."headId", v."position", j."number" AS "jobNumber", j."promiseOn", j."urgent",
      t."number" AS "tag", c."name" AS "casting", p."whereabouts",
      m."position" AS "matePosition", mt."number" AS "mateTag",
      v."rackPlace", v."comebackOfId", v."comebackCause", v."comebackPays", sh."timeZone", sh."locale",
      (SELECT ho."reason" FROM "Hold" ho WHERE ho."visitId" = v."id"
        AND CASE WHEN ho."decidedAt" IS NULL THEN 1 END = 1 ORDER BY ho."openedAt" LIMIT 1) AS "holdReason",
      (SELECT f."what" FROM "Finding" f WHERE f."visitId" = v."id"
        AND CASE WHEN f."answer" IS NULL THEN 1 END = 1 ORDER BY f."reportedAt" LIMIT 1) AS "findingWhat",
      COALESCE(
        (SELECT o."promisedOn" FROM "OutsideOrderVisit" ov JOIN "OutsideOrder" o ON o."id" = ov."orderId"
          WHERE ov."visitId" = v."id" AND CASE WHEN ov."receivedAt" IS NULL THEN 1 END = 1
          ORDER BY o."createdAt" DESC LIMIT 1),
        (SELECT so."promisedOn" FROM "SupplyHead" su JOIN "SupplyLine" sl ON sl."id" = su."lineId"
          JOIN "SupplyOrder" so ON so."id" = sl."orderId"
          WHERE su."visitId" = v."id" AND CASE WHEN su."arrivedAt" IS NULL THEN 1 END = 1
          ORDER BY so."createdAt" DESC LIMIT 1)) AS "arrivesOn",
      (SELECT CASE WHEN COUNT(*) = COUNT(w."promisedOn") THEN MAX(w."promisedOn") END FROM "PartsWait" w
        WHERE w."visitId" = v."id" AND CASE WHEN w."arrivedAt" IS NULL THEN 1 END = 1) AS "partsOn",
      (SELECT string_agg(st."stepId" || '|' || st."occurrence" || '|' || st."orderKey", ',') FROM "RouteStep" st
        WHERE st."visitId" = v."id" AND CASE WHEN st."state" = 'started' THEN 1 END = 1) AS "started"
    FROM "RouteStep" s
    JOIN "Visit" v ON v."id" = s."visitId"
    JOIN "Job" j ON j."id" = v."jobId"
    JOIN "Head" h ON h."id" = v."headId"
    JOIN "Shop" sh ON sh."id" = 1
    LEFT JOIN "VisitPlace" p ON p."visitId" = v."id"
    LEFT JOIN "CastingRecord" c ON c."id" = h."castingId"
    LEFT JOIN "TagAssignment" t ON t."headId" = h."id" AND t."to" IS NULL
    LEFT JOIN "Visit" m ON m."id" = (
      SELECT o."id" FROM "Visit" o JOIN "Hold" ho ON ho."visitId" = o."id"
      WHERE o."pairId" = v."pairId" AND o."id" <> v."id" AND CASE WHEN ho."decidedAt" IS NULL THEN 1 END = 1
      ORDER BY ho."openedAt" LIMIT 1)
    LEFT JOIN "TagAssignment" mt ON mt."headId" = m."headId" AND mt."to" IS NULL
    WHERE s."station" = ${station} AND s."queue" IN ('ready', 'started', 'coming')
      AND (s."queue" <> 'coming' OR NOT EXISTS (
        SELECT 1 FROM "RouteStep" b WHERE b."visitId" = s."visitId" AND CASE WHEN b."station" = s."station"
          AND (b."queue" IN ('ready', 'started') OR (b."queue" = 'coming' AND b."place" < s."place")) THEN 1 END = 1))
    ORDER BY CASE s."queue" WHEN 'coming' THEN 1 ELSE 0 END, j."urgent" DESC,
      CASE WHEN j."promiseOn" IS NULL THEN 1 ELSE 0 END, j."promiseOn", s."place", v."id"
    LIMIT ${pageSize + 1} OFFSET ${(page - 1) * pageSize}`
  return {
    rows: rows.slice(0, pageSize).map((row) => stationRow(row)),
    more: rows.length > pageSize,
  }
}

function stationRow(row: Row): StationRow {
  const { out = [], rework = [], ...step } = routeStepOf(row)
  return { ...row, started: startedKeys(row.started), step, out, rework }
}

/** "thickness||,flow|before|", as the statement puts them together. */
const startedKeys = (text: string | null): StepKey[] =>
  (text ?? '')
    .split(',')
    .filter(Boolean)
    .map((key) => {
      const [stepId = '', occurrence = '', orderId = ''] = key.split('|')
      return { stepId: stepId as StepId, occurrence, orderId: orderId === '' ? null : orderId }
    })

export type StationCount = { readonly ready: number; readonly started: number }

/** How many steps can be worked on at each station, and how many are begun: what its queue lists as ready and started. */
export async function stationCounts(reader: Reader): Promise<Map<string, StationCount>> {
  const rows = await reader.routeStep.groupBy({
    by: ['station', 'queue'],
    where: { queue: { in: ['ready', 'started'] } },
    _count: { _all: true },
  })
  const counts = new Map<string, StationCount>()
  for (const { station, queue, _count } of rows) {
    const before = counts.get(station) ?? { ready: 0, started: 0 }
    counts.set(station, { ...before, [queue === 'started' ? 'started' : 'ready']: _count._all })
  }
  return counts
}
