import 'server-only'
import type { Whereabouts } from '@/lib/core/route/types'
import { Prisma } from '@/prisma/generated/sqlite/client'
import type { Reader } from './db'
import { pageSize, type Paged } from './paging'

/** A head that has not left yet, as the counter lists it. */
export type FloorVisit = {
  readonly id: string
  readonly position: number
  readonly headId: string
  readonly tag: string | null
  readonly whereabouts: string
  readonly changedAt: Date
  readonly job: {
    readonly id: string
    readonly number: string
    readonly promiseOn: string | null
    readonly urgent: boolean
    readonly customer: string
    readonly phone: string
  }
  readonly why: readonly WhyRow[]
}

/** One thing that may hold a head up: an open hold, wait or finding, who has it or sends it, a step that can be worked on. */
export type WhyRow = {
  readonly visitId: string
  readonly kind: 'hold' | 'wait' | 'finding' | 'on order' | 'away' | 'step'
  /** Its reason, the part, the finding, the vendor's name or the step's label. */
  readonly what: string
  /** The day promised; of a step its station. */
  readonly more: string | null
}

const onTheFloor: readonly Whereabouts[] = [
  'expected',
  'on order',
  'in house',
  'away',
  'waiting for parts',
  'waiting for an answer',
  'held',
  'finished',
  'released',
]

type Row = Omit<FloorVisit, 'job' | 'why'> & {
  readonly jobId: string
  readonly jobNumber: string
  readonly promiseOn: string | null
  readonly urgent: boolean
  readonly customer: string | null
  readonly phone: string | null
}

/** The heads that have not left, a hundred jobs a page, the earliest promise first. Two statements. */
export async function floorVisits(reader: Reader, page: number): Promise<Paged<FloorVisit>> {
  const rows = await reader.$queryRaw<Row[]>`
    SELECT v."id", v."position", v."headId", t."number" AS "tag", p."whereabouts", p."changedAt",
      j."id" AS "jobId", j."number" AS "jobNumber", j."promiseOn", j."urgent", c."name" AS "customer", c."phone"
    FROM (
      SELECT f."id" FROM "Job" f WHERE f."id" IN (
        SELECT fv."jobId" FROM "VisitPlace" fp JOIN "Visit" fv ON fv."id" = fp."visitId"
        WHERE fp."whereabouts" IN (${Prisma.join([...onTheFloor])}))
      ORDER BY CASE WHEN f."promiseOn" IS NULL THEN 1 ELSE 0 END, f."promiseOn", f."number"
      LIMIT ${pageSize + 1} OFFSET ${(page - 1) * pageSize}
    ) listed
    JOIN "Job" j ON j."id" = listed."id"
    JOIN "Visit" v ON v."jobId" = j."id"
    JOIN "VisitPlace" p ON p."visitId" = v."id"
    LEFT JOIN "TagAssignment" t ON t."headId" = v."headId" AND t."to" IS NULL
    LEFT JOIN "CustomerContact" c ON c."customerId" = j."customerId"
    WHERE p."whereabouts" IN (${Prisma.join([...onTheFloor])})
    ORDER BY CASE WHEN j."promiseOn" IS NULL THEN 1 ELSE 0 END, j."promiseOn", j."number", v."position"`
  const jobs = [...new Set(rows.map((row) => row.jobId))]
  const listed = new Set(jobs.slice(0, pageSize))
  const shown = rows.filter((row) => listed.has(row.jobId))
  const why = await whyRows(
    reader,
    shown.map((row) => row.id),
  )
  return { rows: shown.map((row) => floorVisit(row, why)), more: jobs.length > pageSize }
}

function floorVisit(row: Row, why: readonly WhyRow[]): FloorVisit {
  const { jobId, jobNumber, promiseOn, urgent, customer, phone, changedAt, ...visit } = row
  return {
    ...visit,
    changedAt: new Date(changedAt),
    job: { id: jobId, number: jobNumber, promiseOn, urgent, customer: customer ?? '', phone: phone ?? '' },
    why: why.filter((one) => one.visitId === row.id),
  }
}

/** In one statement; steps in their order. */
async function whyRows(reader: Reader, visitIds: readonly string[]): Promise<WhyRow[]> {
  if (visitIds.length === 0) return []
  const ids = Prisma.join([...visitIds])
  return reader.$queryRaw<WhyRow[]>`
    SELECT o."visitId", 'away' AS "kind", ve."name" AS "what", r."promisedOn" AS "more", 0 AS "place"
      FROM "OutsideOrderVisit" o JOIN "OutsideOrder" r ON r."id" = o."orderId" JOIN "Vendor" ve ON ve."id" = r."vendorId"
      WHERE o."visitId" IN (${ids}) AND o."receivedAt" IS NULL AND r."sentAt" IS NOT NULL
    UNION ALL
    SELECT h."visitId", 'on order', ve."name", r."promisedOn", 0
      FROM "SupplyHead" h JOIN "SupplyLine" l ON l."id" = h."lineId" JOIN "SupplyOrder" r ON r."id" = l."orderId"
      JOIN "Vendor" ve ON ve."id" = r."vendorId"
      WHERE h."visitId" IN (${ids}) AND h."arrivedAt" IS NULL AND r."endedAt" IS NULL
    UNION ALL
    SELECT "visitId", 'wait', "what", "promisedOn", 0 FROM "PartsWait"
      WHERE "visitId" IN (${ids}) AND "arrivedAt" IS NULL
    UNION ALL
    SELECT "visitId", 'hold', "reason", NULL, 0 FROM "Hold" WHERE "visitId" IN (${ids}) AND "decidedAt" IS NULL
    UNION ALL
    SELECT "visitId", 'finding', "what", NULL, 0 FROM "Finding" WHERE "visitId" IN (${ids}) AND "answer" IS NULL
    UNION ALL
    SELECT "visitId", 'step', "label", "station", "place" FROM "RouteStep"
      WHERE "visitId" IN (${ids}) AND "queue" IN ('ready', 'started')
    ORDER BY 5`
}

/** A finding that the counter lists: one that nobody has answered, or an answer that came over a link. */
export type CounterFinding = {
  readonly id: string
  readonly what: string
  readonly reportedAt: Date
  readonly askedAt: Date | null
  readonly askedHow: string
  readonly answer: string | null
  readonly answeredAt: Date | null
  readonly answeredBy: string
  readonly answeredLinkId: string | null
  readonly headId: string
  readonly tag: string | null
  readonly jobNumber: string
  readonly customer: string | null
  readonly phone: string | null
}

/** A page of the findings without an answer, oldest first, and the newest twenty answers by link since then. */
export async function counterFindings(reader: Reader, since: Date, page: number): Promise<Paged<CounterFinding>> {
  const rows = await reader.$queryRaw<CounterFinding[]>`
    SELECT f."id", f."what", f."reportedAt", f."askedAt", f."askedHow", f."answer", f."answeredAt", f."answeredBy",
      f."answeredLinkId", v."headId", t."number" AS "tag", j."number" AS "jobNumber", c."name" AS "customer", c."phone"
    FROM (
      SELECT "id" FROM (SELECT "id" FROM "Finding" WHERE "answer" IS NULL ORDER BY "reportedAt"
        LIMIT ${pageSize + 1} OFFSET ${(page - 1) * pageSize}) unanswered
      UNION ALL
      SELECT "id" FROM (SELECT "id" FROM "Finding" WHERE "answeredAt" >= ${since} AND "answeredLinkId" IS NOT NULL
        ORDER BY "answeredAt" DESC LIMIT 20) answered
    ) listed
    JOIN "Finding" f ON f."id" = listed."id"
    JOIN "Visit" v ON v."id" = f."visitId"
    JOIN "Job" j ON j."id" = v."jobId"
    LEFT JOIN "TagAssignment" t ON t."headId" = v."headId" AND t."to" IS NULL
    LEFT JOIN "CustomerContact" c ON c."customerId" = j."customerId"
    ORDER BY f."answeredAt" DESC, f."reportedAt"`
  const open = rows.filter((row) => row.answer === null)
  const answered = rows.filter((row) => row.answer !== null)
  return { rows: [...open.slice(0, pageSize), ...answered], more: open.length > pageSize }
}
