import 'server-only'
import { mostOwn } from '@/lib/core/finish/samples'
import { Prisma } from '@/prisma/generated/sqlite/client'
import type { Reader } from './db'

/** How long one thing took in this shop. */
export type TookRow = {
  readonly kind: 'step' | 'vendor' | 'answer' | 'parts' | 'hold'
  /** The step, or the vendor; '' otherwise. */
  readonly key: string
  /** Of a step its station; of a vendor the name. */
  readonly at: string
  /** Steps that a vendor was asked to do, comma-separated. */
  readonly scope: string
  readonly fromAt: Date
  readonly freeAt: Date | null
  readonly toAt: Date
}

/** Older than this nothing counts. */
const yearsBack = 3
const newestLines = 400

type Raw = { readonly [K in keyof TookRow]: TookRow[K] extends Date | null ? string | Date | null : TookRow[K] }

/**
 * The shop's own record for these steps: the newest forty of each, of answers, parts and holds, and what came back of the
 * newest four hundred heads at vendors. One statement, by indexes; the newest of each first.
 */
export async function tookRows(reader: Reader, stepIds: readonly string[], now: Date): Promise<TookRow[]> {
  const since = new Date(now)
  since.setUTCFullYear(since.getUTCFullYear() - yearsBack)
  const steps = [...new Set([...stepIds, 'release', 'send'])].map(
    (stepId) => Prisma.sql`SELECT * FROM (SELECT 'step' AS "kind", "stepId" AS "key", "station" AS "at", '' AS "scope",
      "readyAt" AS "fromAt", "freeAt", "doneAt" AS "toAt" FROM "StepTime"
      WHERE "stepId" = ${stepId} AND "doneAt" > ${since} ORDER BY "doneAt" DESC LIMIT ${mostOwn}) s`,
  )
  const rows = await reader.$queryRaw<Raw[]>`
    ${Prisma.join(steps, ' UNION ALL ')}
    UNION ALL SELECT 'answer', '', '', '', a."reportedAt", NULL, a."answeredAt"
      FROM (SELECT "reportedAt", "answeredAt" FROM "Finding" WHERE "answeredAt" > ${since} ORDER BY "answeredAt" DESC LIMIT ${mostOwn}) a
    UNION ALL SELECT 'parts', '', '', '', p."openedAt", NULL, p."arrivedAt"
      FROM (SELECT "openedAt", "arrivedAt" FROM "PartsWait" WHERE "arrivedAt" > ${since} ORDER BY "arrivedAt" DESC LIMIT ${mostOwn}) p
    UNION ALL SELECT 'hold', '', '', '', h."openedAt", NULL, h."decidedAt"
      FROM (SELECT "openedAt", "decidedAt" FROM "Hold" WHERE "decidedAt" > ${since} ORDER BY "decidedAt" DESC LIMIT ${mostOwn}) h
    UNION ALL SELECT 'vendor', o."vendorId", v."name", o."scope", o."sentAt", NULL, l."receivedAt"
      FROM (SELECT "id" FROM "OutsideOrderVisit" WHERE "id" > '' ORDER BY "id" DESC LIMIT ${newestLines}) listed
      JOIN "OutsideOrderVisit" l ON l."id" = listed."id"
      JOIN "OutsideOrder" o ON o."id" = l."orderId"
      JOIN "Vendor" v ON v."id" = o."vendorId"
      WHERE l."receivedAt" IS NOT NULL AND o."sentAt" IS NOT NULL`
  return rows.map((row) => ({
    ...row,
    fromAt: new Date(row.fromAt ?? 0),
    freeAt: row.freeAt === null ? null : new Date(row.freeAt),
    toAt: new Date(row.toAt ?? 0),
  }))
}

/** How many steps stand ready or started at a station, of jobs with this promise. */
export type QueuedRow = {
  readonly station: string
  readonly urgent: boolean
  readonly promiseOn: string | null
  readonly heads: number
}

/** What a head that has not left is at, has before it and waits for. */
export type OpenRow = {
  readonly visitId: string
  readonly kind: 'hold' | 'wait' | 'finding' | 'on order' | 'away' | 'step' | 'since'
  /** Its reason, the part, the finding, the vendor's name or the step's label. */
  readonly what: string
  /** The day promised; of a step its station. */
  readonly more: string | null
  readonly since: Date | null
  /** The step, of a parts wait the one that waits; the vendor, the finding. */
  readonly key: string
  /** Steps that the vendor was asked to do; of a step '' or 'ready', 'started', 'coming'. */
  readonly scope: string
}

type OpenRaw = Omit<OpenRow, 'since' | 'kind'> & {
  readonly kind: OpenRow['kind'] | 'queue'
  readonly since: string | Date | null
}

export type OpenNow = { readonly rows: readonly OpenRow[]; readonly queued: readonly QueuedRow[] }

/** The same of many heads, steps in their order, and what stands at the stations now, by promise. One statement. */
export async function openRows(reader: Reader, visitIds: readonly string[]): Promise<OpenNow> {
  if (visitIds.length === 0) return { rows: [], queued: [] }
  const ids = Prisma.join([...visitIds])
  const rows = await reader.$queryRaw<OpenRaw[]>`
    SELECT o."visitId", 'away' AS "kind", ve."name" AS "what", r."promisedOn" AS "more", r."sentAt" AS "since",
      r."vendorId" AS "key", r."scope", 0 AS "place"
      FROM "OutsideOrderVisit" o JOIN "OutsideOrder" r ON r."id" = o."orderId" JOIN "Vendor" ve ON ve."id" = r."vendorId"
      WHERE o."visitId" IN (${ids}) AND o."receivedAt" IS NULL AND r."sentAt" IS NOT NULL
    UNION ALL
    SELECT h."visitId", 'on order', ve."name", r."promisedOn", r."createdAt", r."vendorId", '', 0
      FROM "SupplyHead" h JOIN "SupplyLine" l ON l."id" = h."lineId" JOIN "SupplyOrder" r ON r."id" = l."orderId"
      JOIN "Vendor" ve ON ve."id" = r."vendorId"
      WHERE h."visitId" IN (${ids}) AND h."arrivedAt" IS NULL AND r."endedAt" IS NULL
    UNION ALL
    SELECT "visitId", 'wait', "what", "promisedOn", "openedAt", "stepId", '', 0 FROM "PartsWait"
      WHERE "visitId" IN (${ids}) AND "arrivedAt" IS NULL
    UNION ALL
    SELECT "visitId", 'hold', "reason", NULL, "openedAt", "id", '', 0 FROM "Hold"
      WHERE "visitId" IN (${ids}) AND "decidedAt" IS NULL
    UNION ALL
    SELECT "visitId", 'finding', "what", NULL, "reportedAt", "id", '', 0 FROM "Finding"
      WHERE "visitId" IN (${ids}) AND "answer" IS NULL
    UNION ALL
    SELECT "visitId", 'since', '', NULL, "receivedAt", '', '', 0 FROM "OutsideOrderVisit"
      WHERE "visitId" IN (${ids}) AND "receivedAt" IS NOT NULL
    UNION ALL
    SELECT "visitId", 'since', '', NULL, MAX("doneAt"), '', '', 0 FROM "StepTime"
      WHERE "visitId" IN (${ids}) GROUP BY "visitId"
    UNION ALL
    SELECT "visitId", 'step', "label", "station", NULL, "stepId", "queue", "place" FROM "RouteStep"
      WHERE "visitId" IN (${ids}) AND "queue" IN ('ready', 'started', 'coming')
    UNION ALL
    SELECT '', 'queue', s."station", j."promiseOn", NULL, CASE WHEN j."urgent" THEN 'urgent' ELSE '' END,
      CAST(COUNT(DISTINCT s."visitId") AS TEXT), 0
      FROM "RouteStep" s JOIN "Visit" v ON v."id" = s."visitId" JOIN "Job" j ON j."id" = v."jobId"
      WHERE s."queue" IN ('ready', 'started')
      GROUP BY s."station", j."urgent", j."promiseOn"
    ORDER BY 8`
  return {
    rows: rows.flatMap(({ kind, since, ...row }) =>
      kind === 'queue' ? [] : [{ ...row, kind, since: since === null ? null : new Date(since) }],
    ),
    queued: rows.flatMap(({ kind, what, more, key, scope }) =>
      kind === 'queue' ? [{ station: what, promiseOn: more, urgent: key === 'urgent', heads: Number(scope) }] : [],
    ),
  }
}
