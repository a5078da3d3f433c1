import 'server-only'
import { Prisma } from '@/prisma/generated/sqlite/client'
import type { Reader } from './db'
import { pageOfRows, type Paged } from './paging'
import type { SupplyToShow } from './supply'

/** A head as the Away page names it. */
export type ListedHead = {
  readonly id: string
  readonly headId: string
  readonly position: number
  readonly job: { readonly number: string; readonly promiseOn: string | null }
  readonly head: { readonly tags: readonly { readonly number: string }[] }
}

type HeadColumns = {
  readonly visitId: string
  readonly headId: string
  readonly position: number
  readonly jobNumber: string
  readonly promiseOn: string | null
  readonly tag: string | null
}

const listedHead = (row: HeadColumns): ListedHead => ({
  id: row.visitId,
  headId: row.headId,
  position: row.position,
  job: { number: row.jobNumber, promiseOn: row.promiseOn },
  head: { tags: row.tag === null ? [] : [{ number: row.tag }] },
})

/** Orders, waits, steps or heads on one page of a list. */
const awayLimit = 200

const skipped = (page: number): number => (page - 1) * awayLimit
const paged = <T>(found: readonly T[]): Paged<T> => pageOfRows(found, awayLimit)

const grouped = <Row>(rows: readonly Row[], keyOf: (row: Row) => string): Row[][] => {
  const groups = new Map<string, Row[]>()
  for (const row of rows) groups.set(keyOf(row), [...(groups.get(keyOf(row)) ?? []), row])
  return [...groups.values()]
}

export type ListedOrder = {
  readonly id: string
  readonly number: string
  readonly vendorId: string
  readonly scope: string
  readonly redoOfId: string | null
  readonly createdAt: Date
  readonly sentAt: Date | null
  readonly acceptedAt: Date | null
  readonly promisedOn: string | null
  readonly vendor: { readonly name: string; readonly phone: string }
  readonly visits: readonly {
    readonly receivedAt: Date | null
    readonly visit: ListedHead & {
      readonly bookedAt: Date
      readonly urgent: boolean
      readonly whereabouts: string
      readonly job: ListedHead['job'] & {
        readonly customer: { readonly contact: { readonly name: string; readonly phone: string } | null }
      }
    }
  }[]
}

type OrderRow = HeadColumns &
  Omit<ListedOrder, 'vendor' | 'visits' | 'promisedOn'> & {
    readonly orderPromise: string | null
    readonly vendor: string
    readonly vendorPhone: string
    readonly receivedAt: Date | null
    readonly customer: string | null
    readonly phone: string | null
    readonly bookedAt: string | Date
    readonly urgent: boolean
    readonly whereabouts: string | null
  }

/** Orders with at least one head still out, oldest first, with their heads. One statement. */
export async function ordersOut(reader: Reader, page: number): Promise<Paged<ListedOrder>> {
  const rows = await reader.$queryRaw<OrderRow[]>`
    SELECT o."id", o."number", o."vendorId", o."scope", o."redoOfId", o."createdAt", o."sentAt", o."acceptedAt",
      o."promisedOn" AS "orderPromise", ve."name" AS "vendor", ve."phone" AS "vendorPhone", l."receivedAt",
      v."createdAt" AS "bookedAt", j."urgent", pl."whereabouts", v."id" AS "visitId", v."headId", v."position", j."number" AS "jobNumber", j."promiseOn", t."number" AS "tag",
      c."name" AS "customer", c."phone"
    FROM (
      SELECT s."id" FROM "OutsideOrder" s
      WHERE s."id" IN (SELECT "orderId" FROM "OutsideOrderVisit" WHERE "receivedAt" IS NULL)
      ORDER BY s."sentAt", s."id" LIMIT ${awayLimit + 1} OFFSET ${skipped(page)}
    ) listed
    JOIN "OutsideOrder" o ON o."id" = listed."id"
    JOIN "Vendor" ve ON ve."id" = o."vendorId"
    JOIN "OutsideOrderVisit" l ON l."orderId" = o."id"
    JOIN "Visit" v ON v."id" = l."visitId"
    JOIN "Job" j ON j."id" = v."jobId"
    LEFT JOIN "TagAssignment" t ON t."headId" = v."headId" AND t."to" IS NULL
    LEFT JOIN "CustomerContact" c ON c."customerId" = j."customerId"
    LEFT JOIN "VisitPlace" pl ON pl."visitId" = v."id"
    ORDER BY o."sentAt", o."id", l."id"`
  const orders = grouped(rows, (row) => row.id).flatMap((lines) => {
    const [first] = lines
    if (!first) return []
    const { vendor, vendorPhone, orderPromise, id, number, vendorId, scope, redoOfId } = first
    const { createdAt, sentAt, acceptedAt } = first
    return [
      {
        ...{ id, number, vendorId, scope, redoOfId, createdAt, sentAt, acceptedAt, promisedOn: orderPromise },
        vendor: { name: vendor, phone: vendorPhone },
        visits: lines.map((line) => ({ receivedAt: line.receivedAt, visit: withCustomer(line) })),
      },
    ]
  })
  return paged(orders)
}

function withCustomer(row: OrderRow) {
  const head = listedHead(row)
  const contact = row.customer === null ? null : { name: row.customer, phone: row.phone ?? '' }
  return {
    ...head,
    bookedAt: new Date(row.bookedAt),
    urgent: Boolean(row.urgent),
    whereabouts: row.whereabouts ?? '',
    job: { ...head.job, customer: { contact } },
  }
}

export type StepToSend = { readonly stepId: string; readonly label: string; readonly visit: ListedHead }

/** Steps that can go out now: an angle cut, or any step whose station is outside, on a head that is here. */
export async function stepsToSend(reader: Reader, page: number): Promise<Paged<StepToSend>> {
  const rows = await reader.$queryRaw<(HeadColumns & { readonly stepId: string; readonly label: string })[]>`
    SELECT s."stepId", s."label", v."id" AS "visitId", v."headId", v."position", j."number" AS "jobNumber",
      j."promiseOn", t."number" AS "tag"
    FROM "RouteStep" s
    JOIN "VisitPlace" p ON p."visitId" = s."visitId" AND p."whereabouts" IN ('in house', 'finished')
    JOIN "Visit" v ON v."id" = s."visitId"
    JOIN "Job" j ON j."id" = v."jobId"
    LEFT JOIN "TagAssignment" t ON t."headId" = v."headId" AND t."to" IS NULL
    WHERE s."queue" = 'ready' AND (s."stepId" = 'angle-cut' OR s."station" = 'outside')
    ORDER BY s."place", v."id" LIMIT ${awayLimit + 1} OFFSET ${skipped(page)}`
  return paged(rows.map((row) => ({ stepId: row.stepId, label: row.label, visit: listedHead(row) })))
}

type WaitRow = HeadColumns & {
  readonly id: string
  readonly version: number
  readonly what: string
  readonly fromWhom: string
  readonly promisedOn: string | null
  readonly openedAt: Date
  readonly supplyId: string | null
  readonly supplyNumber: string | null
}

const ofJob = (jobId: string | null) => (jobId === null ? Prisma.empty : Prisma.sql`AND v."jobId" = ${jobId}`)

type Waiting = { readonly jobId: string | null; readonly toOrder: boolean }

/** Parts that heads in the shop wait for, oldest first, with the order that brings them; `toOrder`: those that none brings. */
export async function openWaits(
  reader: Reader,
  page: number,
  { jobId, toOrder }: Waiting = { jobId: null, toOrder: false },
) {
  const rows = await reader.$queryRaw<WaitRow[]>`
    SELECT w."id", w."version", w."what", w."fromWhom", w."promisedOn", w."openedAt", v."id" AS "visitId", v."headId",
      v."position", j."number" AS "jobNumber", j."promiseOn", t."number" AS "tag", so."id" AS "supplyId",
      so."number" AS "supplyNumber"
    FROM "PartsWait" w
    JOIN "VisitPlace" p ON p."visitId" = w."visitId"
      AND p."whereabouts" NOT IN ('released', 'handed over', 'returned as is', 'scrapped', 'taken off')
    JOIN "Visit" v ON v."id" = w."visitId" ${ofJob(jobId)}
    JOIN "Job" j ON j."id" = v."jobId"
    LEFT JOIN "TagAssignment" t ON t."headId" = v."headId" AND t."to" IS NULL
    LEFT JOIN "SupplyOrder" so ON so."id" = (
      SELECT l."orderId" FROM "SupplyLine" l JOIN "SupplyOrder" o ON o."id" = l."orderId" AND o."endedAt" IS NULL
      WHERE l."waitId" = w."id" LIMIT 1)
    WHERE w."arrivedAt" IS NULL ${toOrder ? Prisma.sql`AND so."id" IS NULL` : Prisma.empty}
    ORDER BY w."openedAt", w."id" LIMIT ${awayLimit + 1} OFFSET ${skipped(page)}`
  return paged(
    rows.map(({ supplyId, supplyNumber, ...row }) => ({
      ...row,
      openedAt: new Date(row.openedAt),
      visit: listedHead(row),
      supply: supplyId === null ? null : { orderId: supplyId, number: supplyNumber ?? '' },
    })),
  )
}

export type HeadToOrder = ListedHead & {
  readonly source: string
  readonly castingId: string | null
  readonly casting: string | null
}

/** Heads on order that no supply order brings: of one job, or of all. */
export async function headsNobodyOrdered(
  reader: Reader,
  page: number,
  jobId: string | null = null,
): Promise<Paged<HeadToOrder>> {
  const rows = await reader.$queryRaw<(HeadColumns & Omit<HeadToOrder, keyof ListedHead>)[]>`
    SELECT v."id" AS "visitId", v."headId", v."position", j."number" AS "jobNumber", j."promiseOn", t."number" AS "tag",
      v."source", c."id" AS "castingId", c."name" AS "casting"
    FROM "VisitPlace" p
    JOIN "Visit" v ON v."id" = p."visitId" ${ofJob(jobId)}
    JOIN "Job" j ON j."id" = v."jobId"
    JOIN "Head" hd ON hd."id" = v."headId"
    LEFT JOIN "CastingRecord" c ON c."id" = hd."castingId"
    LEFT JOIN "TagAssignment" t ON t."headId" = v."headId" AND t."to" IS NULL
    WHERE p."whereabouts" = 'on order' AND NOT EXISTS (
      SELECT 1 FROM "SupplyHead" h JOIN "SupplyLine" l ON l."id" = h."lineId"
      JOIN "SupplyOrder" o ON o."id" = l."orderId" AND o."endedAt" IS NULL WHERE h."visitId" = v."id")
    ORDER BY v."jobId", v."position" LIMIT ${awayLimit + 1} OFFSET ${skipped(page)}`
  return paged(
    rows.map(({ source, castingId, casting, ...row }) => ({ ...listedHead(row), source, castingId, casting })),
  )
}

type SupplyRow = HeadColumns & {
  readonly id: string
  readonly number: string
  readonly version: number
  readonly note: string
  readonly createdAt: Date
  readonly orderPromise: string | null
  readonly vendor: string
  readonly vendorPhone: string
  readonly orderJob: string | null
  readonly lineId: string
  readonly kind: string
  readonly what: string
  readonly quantity: number
  readonly arrived: number
  readonly costMinor: number | null
  readonly waitId: string | null
  readonly waitArrivedAt: Date | null
  readonly nominalText: string | null
  readonly casting: string | null
  readonly supplyHeadId: string | null
  readonly headArrivedAt: Date | null
  readonly whereabouts: string | null
}

/** Supply orders of which something has not come; with `dueBy` those promised by that day. One statement. */
export async function supplyOut(reader: Reader, page: number, dueBy: string | null): Promise<Paged<SupplyToShow>> {
  const rows = await reader.$queryRaw<SupplyRow[]>`
    SELECT o."id", o."number", o."version", o."note", o."createdAt", o."promisedOn" AS "orderPromise",
      ve."name" AS "vendor", ve."phone" AS "vendorPhone", oj."number" AS "orderJob", l."id" AS "lineId", l."kind",
      l."what", l."quantity", l."arrived", l."costMinor", l."waitId", w."arrivedAt" AS "waitArrivedAt",
      va."nominalText", ca."name" AS "casting", h."id" AS "supplyHeadId", h."arrivedAt" AS "headArrivedAt",
      v."id" AS "visitId", v."headId", v."position", j."number" AS "jobNumber", j."promiseOn", t."number" AS "tag",
      p."whereabouts"
    FROM (
      SELECT "id" FROM "SupplyOrder"
      WHERE "arrivedAt" IS NULL AND "endedAt" IS NULL AND (${dueBy ?? ''} = '' OR "promisedOn" <= ${dueBy ?? ''})
      ORDER BY "createdAt", "id" LIMIT ${awayLimit + 1} OFFSET ${skipped(page)}
    ) listed
    JOIN "SupplyOrder" o ON o."id" = listed."id"
    JOIN "Vendor" ve ON ve."id" = o."vendorId"
    JOIN "SupplyLine" l ON l."orderId" = o."id"
    LEFT JOIN "Job" oj ON oj."id" = o."jobId"
    LEFT JOIN "CastingVariant" va ON va."id" = l."variantId"
    LEFT JOIN "CastingRecord" ca ON ca."id" = va."castingId"
    LEFT JOIN "PartsWait" w ON w."id" = l."waitId"
    LEFT JOIN "SupplyHead" h ON h."lineId" = l."id"
    LEFT JOIN "Visit" v ON v."id" = COALESCE(h."visitId", w."visitId")
    LEFT JOIN "Job" j ON j."id" = v."jobId"
    LEFT JOIN "TagAssignment" t ON t."headId" = v."headId" AND t."to" IS NULL
    LEFT JOIN "VisitPlace" p ON p."visitId" = v."id"
    ORDER BY o."createdAt", o."id", l."id", h."id"`
  return paged(grouped(rows, (row) => row.id).flatMap(([first, ...others]) => (first ? [supplyOf(first, others)] : [])))
}

const supplyOf = (first: SupplyRow, others: readonly SupplyRow[]): SupplyToShow => ({
  id: first.id,
  number: first.number,
  version: first.version,
  note: first.note,
  createdAt: first.createdAt,
  promisedOn: first.orderPromise,
  arrivedAt: null,
  endedAt: null,
  endReason: '',
  vendor: { name: first.vendor, phone: first.vendorPhone },
  job: first.orderJob === null ? null : { number: first.orderJob },
  promises: [],
  lines: grouped([first, ...others], (row) => row.lineId).flatMap(([line, ...heads]) =>
    line ? [lineOf(line, [line, ...heads])] : [],
  ),
})

function lineOf(line: SupplyRow, rows: readonly SupplyRow[]): SupplyToShow['lines'][number] {
  const visitOf = (row: SupplyRow) => ({
    ...listedHead(row),
    place: row.whereabouts === null ? null : { whereabouts: row.whereabouts },
  })
  const { kind, what, quantity, arrived, costMinor, waitId, nominalText, casting } = line
  return {
    ...{ id: line.lineId, kind, what, quantity, arrived, costMinor, waitId },
    variant: casting === null ? null : { nominalText: nominalText ?? '', casting: { name: casting } },
    wait: waitId === null ? null : { arrivedAt: line.waitArrivedAt, visit: visitOf(line) },
    heads: rows.flatMap((row) =>
      row.supplyHeadId === null ? [] : [{ arrivedAt: row.headArrivedAt, visit: visitOf(row) }],
    ),
  }
}
