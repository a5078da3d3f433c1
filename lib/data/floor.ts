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
  readonly bookedAt: Date
  readonly jobId: string
  readonly jobNumber: string
  readonly promiseOn: string | null
  readonly urgent: boolean
  readonly dueMinor: number
  readonly customer: string
  readonly phone: string
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
  'returned as is',
]

/** More jobs than a shop has room for; what is beyond it is not looked at. */
export const mostOpenJobs = 2500

type Row = { readonly [K in keyof FloorVisit]: FloorVisit[K] extends Date ? string | Date : FloorVisit[K] | null } & {
  readonly id: string
  readonly headId: string
  readonly jobId: string
}

/** The heads that have not left, the earliest promise first. One statement. */
export async function floorVisits(reader: Reader): Promise<FloorVisit[]> {
  const rows = await reader.$queryRaw<Row[]>`
    SELECT v."id", v."position", v."headId", v."createdAt" AS "bookedAt", t."number" AS "tag", p."whereabouts",
      p."changedAt", j."id" AS "jobId", j."number" AS "jobNumber", j."promiseOn", j."urgent", j."dueMinor",
      c."name" AS "customer", c."phone"
    FROM "VisitPlace" p
    JOIN "Visit" v ON v."id" = p."visitId"
    JOIN "Job" j ON j."id" = v."jobId"
    LEFT JOIN "TagAssignment" t ON t."headId" = v."headId" AND t."to" IS NULL
    LEFT JOIN "CustomerContact" c ON c."customerId" = j."customerId"
    WHERE p."whereabouts" IN (${Prisma.join([...onTheFloor])})
    ORDER BY CASE WHEN j."promiseOn" IS NULL THEN 1 ELSE 0 END, j."promiseOn", j."number", v."position"
    LIMIT ${mostOpenJobs}`
  return rows.map((row) => ({
    ...{ id: row.id, headId: row.headId, jobId: row.jobId, tag: row.tag, promiseOn: row.promiseOn },
    position: row.position ?? 0,
    whereabouts: row.whereabouts ?? '',
    changedAt: new Date(row.changedAt),
    bookedAt: new Date(row.bookedAt),
    jobNumber: row.jobNumber ?? '',
    urgent: Boolean(row.urgent),
    dueMinor: Number(row.dueMinor ?? 0),
    customer: row.customer ?? '',
    phone: row.phone ?? '',
  }))
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
