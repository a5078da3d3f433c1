import 'server-only'
import { mostOwn } from '@/lib/core/finish/samples'
import type { RouteRules } from '@/lib/core/route/rules'
import { stepIds } from '@/lib/core/route/step-ids'
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
  /** Heads that make a full box to a vendor, '' where a head goes when it is ready; null: of no vendor, or a retired one. */
  readonly box: string | null
  readonly fromAt: Date
  readonly freeAt: Date | null
  /** Null: a head that is still at the vendor. */
  readonly toAt: Date | null
}

/** How many heads stand ready or started at a station, of jobs with this promise. */
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
  /** Steps that the vendor was asked to do; of a step 'ready', 'started' or 'coming'. */
  readonly scope: string
}

export type FinishRows = {
  /** Of the heads asked about; steps in their order. */
  readonly open: readonly OpenRow[]
  /** What stands at the stations now. */
  readonly queued: readonly QueuedRow[]
  /** The shop's own record, the newest first. */
  readonly took: readonly TookRow[]
}

/** Older than this nothing counts. */
const yearsBack = 3
const newestLines = 400

type Moment = string | Date | null
type Raw = {
  readonly visitId: string
  readonly kind: string
  readonly what: string
  readonly more: string | null
  readonly since: Moment
  readonly key: string
  readonly scope: string
  readonly place: number | bigint
  readonly freeAt: Moment
  readonly toAt: Moment
}

/**
 * All that the finish of some heads is drawn from, in one statement, by indexes: what each is at and waits for, what stands
 * at the stations by promise, and the shop's own record: the newest forty of each step, of answers, parts and holds, and
 * the newest four hundred heads at vendors.
 */
export async function finishRows(
  reader: Reader,
  { visitIds, rules, now }: { readonly visitIds: readonly string[]; readonly rules: RouteRules; readonly now: Date },
): Promise<FinishRows> {
  const since = new Date(now)
  since.setUTCFullYear(since.getUTCFullYear() - yearsBack)
  const parts = [...stepParts(rules, since), ...waitParts(since), ...openParts(visitIds)]
  const rows = await reader.$queryRaw<Raw[]>`${Prisma.join(parts, ' UNION ALL ')}`
  const of = (kind: string) => rows.filter((row) => row.kind === kind)
  return {
    open: rows
      .filter(({ kind }) => openKinds.has(kind))
      .sort((a, b) => Number(a.place) - Number(b.place))
      .map(openRow),
    queued: of('queue').map(({ what, more, key, scope }) => ({
      ...{ station: what, promiseOn: more, urgent: key === 'urgent', heads: Number(scope) },
    })),
    took: rows
      .filter(({ kind }) => kind.startsWith('took '))
      .map(tookRow)
      .sort((a, b) => (b.toAt ?? b.fromAt).getTime() - (a.toAt ?? a.fromAt).getTime()),
  }
}

const openKinds = new Set<string>(['hold', 'wait', 'finding', 'on order', 'away', 'step', 'since'])
const dateOf = (at: Moment): Date | null => (at === null ? null : new Date(at))

const openRow = ({ visitId, kind, what, more, since, key, scope }: Raw): OpenRow => ({
  ...{ visitId, what, more, key, scope, since: dateOf(since) },
  kind: kind as OpenRow['kind'],
})

const tookRow = ({ kind, what, more, since, key, scope, freeAt, toAt }: Raw): TookRow => ({
  ...{
    key,
    scope,
    at: what,
    box: more,
    fromAt: dateOf(since) ?? new Date(0),
    freeAt: dateOf(freeAt),
    toAt: dateOf(toAt),
  },
  kind: kind.slice('took '.length) as TookRow['kind'],
})

/** The first of them names the columns and fixes their types. */
function stepParts({ own }: RouteRules, since: Date): Prisma.Sql[] {
  const ids = ['release', 'send', ...stepIds, ...own.map(({ id }) => id)]
  return ids.map(
    (stepId) => Prisma.sql`SELECT * FROM (SELECT '' AS "visitId", 'took step' AS "kind", "station" AS "what",
      CAST(NULL AS TEXT) AS "more", "readyAt" AS "since", "stepId" AS "key", '' AS "scope", 0 AS "place", "freeAt",
      "doneAt" AS "toAt" FROM "StepTime"
      WHERE "stepId" = ${stepId} AND "doneAt" > ${since} ORDER BY "doneAt" DESC LIMIT ${mostOwn}) tk`,
  )
}

const waitParts = (since: Date): Prisma.Sql[] => [
  Prisma.sql`SELECT '', 'took answer', '', NULL, ta."reportedAt", '', '', 0, NULL, ta."answeredAt"
    FROM (SELECT "reportedAt", "answeredAt" FROM "Finding" WHERE "answeredAt" > ${since}
      ORDER BY "answeredAt" DESC LIMIT ${mostOwn}) ta`,
  Prisma.sql`SELECT '', 'took parts', '', NULL, tp."openedAt", '', '', 0, NULL, tp."arrivedAt"
    FROM (SELECT "openedAt", "arrivedAt" FROM "PartsWait" WHERE "arrivedAt" > ${since}
      ORDER BY "arrivedAt" DESC LIMIT ${mostOwn}) tp`,
  Prisma.sql`SELECT '', 'took hold', '', NULL, th."openedAt", '', '', 0, NULL, th."decidedAt"
    FROM (SELECT "openedAt", "decidedAt" FROM "Hold" WHERE "decidedAt" > ${since}
      ORDER BY "decidedAt" DESC LIMIT ${mostOwn}) th`,
  Prisma.sql`SELECT '', 'took vendor', v."name",
      CASE WHEN v."retiredAt" IS NULL THEN COALESCE(CAST(v."boxHeads" AS TEXT), '') END, o."sentAt", o."vendorId",
      o."scope", 0, NULL, l."receivedAt"
    FROM (SELECT "id" FROM "OutsideOrderVisit" WHERE "id" > '' ORDER BY "id" DESC LIMIT ${newestLines}) listed
    JOIN "OutsideOrderVisit" l ON l."id" = listed."id"
    JOIN "OutsideOrder" o ON o."id" = l."orderId"
    JOIN "Vendor" v ON v."id" = o."vendorId"
    WHERE o."sentAt" IS NOT NULL`,
  Prisma.sql`SELECT '', 'queue', s."station", j."promiseOn", NULL, CASE WHEN j."urgent" THEN 'urgent' ELSE '' END,
      CAST(COUNT(DISTINCT s."visitId") AS TEXT), 0, NULL, NULL
    FROM "RouteStep" s JOIN "Visit" v ON v."id" = s."visitId" JOIN "Job" j ON j."id" = v."jobId"
    WHERE s."queue" IN ('ready', 'started')
    GROUP BY s."station", j."urgent", j."promiseOn"`,
]

function openParts(visitIds: readonly string[]): Prisma.Sql[] {
  if (visitIds.length === 0) return []
  const ids = Prisma.join([...visitIds])
  return [
    Prisma.sql`SELECT o."visitId", 'away', ve."name", r."promisedOn", r."sentAt", r."vendorId", r."scope", 0, NULL, NULL
      FROM "OutsideOrderVisit" o JOIN "OutsideOrder" r ON r."id" = o."orderId" JOIN "Vendor" ve ON ve."id" = r."vendorId"
      WHERE o."visitId" IN (${ids}) AND o."receivedAt" IS NULL AND r."sentAt" IS NOT NULL`,
    Prisma.sql`SELECT h."visitId", 'on order', ve."name", r."promisedOn", r."createdAt", r."vendorId", '', 0, NULL, NULL
      FROM "SupplyHead" h JOIN "SupplyLine" l ON l."id" = h."lineId" JOIN "SupplyOrder" r ON r."id" = l."orderId"
      JOIN "Vendor" ve ON ve."id" = r."vendorId"
      WHERE h."visitId" IN (${ids}) AND h."arrivedAt" IS NULL AND r."endedAt" IS NULL`,
    Prisma.sql`SELECT "visitId", 'wait', "what", "promisedOn", "openedAt", "stepId", '', 0, NULL, NULL
      FROM "PartsWait" WHERE "visitId" IN (${ids}) AND "arrivedAt" IS NULL`,
    Prisma.sql`SELECT "visitId", 'hold', "reason", NULL, "openedAt", "id", '', 0, NULL, NULL
      FROM "Hold" WHERE "visitId" IN (${ids}) AND "decidedAt" IS NULL`,
    Prisma.sql`SELECT "visitId", 'finding', "what", NULL, "reportedAt", "id", '', 0, NULL, NULL
      FROM "Finding" WHERE "visitId" IN (${ids}) AND "answer" IS NULL`,
    Prisma.sql`SELECT "visitId", 'since', '', NULL, "receivedAt", '', '', 0, NULL, NULL
      FROM "OutsideOrderVisit" WHERE "visitId" IN (${ids}) AND "receivedAt" IS NOT NULL`,
    Prisma.sql`SELECT "visitId", 'since', '', NULL, MAX("doneAt"), '', '', 0, NULL, NULL
      FROM "StepTime" WHERE "visitId" IN (${ids}) GROUP BY "visitId"`,
    Prisma.sql`SELECT "visitId", 'step', "label", "station", NULL, "stepId", "queue", "place", NULL, NULL
      FROM "RouteStep" WHERE "visitId" IN (${ids}) AND "queue" IN ('ready', 'started', 'coming')`,
  ]
}
