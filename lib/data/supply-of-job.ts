import 'server-only'
import type { Reader } from './db'
import type { SupplyToShow } from './supply'
import { byId, readTables, there, type Rows, type Scope, type TableName, type Wanted } from './tables'

/** `o`: the orders for the job, or that buy one of its heads or parts; `l`: their lines; `h`: the visits these are for. */
const scopeOf = (jobId: string): Scope => ({
  sql: `"o" AS (
      SELECT "id" FROM "SupplyOrder" WHERE "jobId" = ?
      UNION
      SELECT sl."orderId" FROM "Visit" v JOIN "SupplyHead" sh ON sh."visitId" = v."id"
        JOIN "SupplyLine" sl ON sl."id" = sh."lineId" WHERE v."jobId" = ?
      UNION
      SELECT sl."orderId" FROM "Visit" v JOIN "PartsWait" w ON w."visitId" = v."id"
        JOIN "SupplyLine" sl ON sl."waitId" = w."id" WHERE v."jobId" = ?),
    "l" AS (SELECT "id", "variantId", "waitId" FROM "SupplyLine" WHERE "orderId" IN (SELECT "id" FROM "o")),
    "h" AS (
      SELECT "visitId" FROM "SupplyHead" WHERE "lineId" IN (SELECT "id" FROM "l")
      UNION
      SELECT "visitId" FROM "PartsWait" WHERE "id" IN (SELECT "waitId" FROM "l"))`,
  params: [jobId, jobId, jobId],
})

const ofOrders = '"orderId" IN (SELECT "id" FROM "o")'
const orders = '(SELECT "id" FROM "o")'
const variants = '(SELECT "variantId" FROM "l")'
const visits = '(SELECT "visitId" FROM "h")'

const tables = {
  SupplyOrder: `"id" IN ${orders}`,
  Vendor: `"id" IN (SELECT "vendorId" FROM "SupplyOrder" WHERE "id" IN ${orders})`,
  SupplyPromise: ofOrders,
  SupplyLine: ofOrders,
  SupplyHead: '"lineId" IN (SELECT "id" FROM "l")',
  PartsWait: '"id" IN (SELECT "waitId" FROM "l")',
  CastingVariant: `"id" IN ${variants}`,
  CastingRecord: `"id" IN (SELECT "castingId" FROM "CastingVariant" WHERE "id" IN ${variants})`,
  Visit: `"id" IN ${visits}`,
  VisitPlace: `"visitId" IN ${visits}`,
  TagAssignment: `"headId" IN (SELECT "headId" FROM "Visit" WHERE "id" IN ${visits}) AND "to" IS NULL`,
  Job: `"id" IN (
    SELECT "jobId" FROM "Visit" WHERE "id" IN ${visits}
    UNION
    SELECT "jobId" FROM "SupplyOrder" WHERE "id" IN ${orders})`,
} satisfies Partial<Wanted<TableName>>

/** Every supply order that is for a job, or that buys one of its heads or parts, the oldest first: one statement. */
export async function supplyOfJob(reader: Reader, jobId: string): Promise<SupplyToShow[]> {
  const rows = await readTables(reader, scopeOf(jobId), tables)
  const visitOf = visitIn(rows)
  const waits = byId(rows.PartsWait)
  const linesOf = (orderId: string): SupplyToShow['lines'] =>
    rows.SupplyLine.filter((line) => line.orderId === orderId)
      .sort(inOrderOfIds)
      .map((line) => {
        const wait = line.waitId === null ? undefined : waits.get(line.waitId)
        const heads = rows.SupplyHead.filter(({ lineId }) => lineId === line.id).sort(inOrderOfIds)
        return {
          ...line,
          variant: variantIn(rows, line.variantId),
          wait: wait ? { arrivedAt: wait.arrivedAt, visit: visitOf(wait.visitId) } : null,
          heads: heads.map(({ arrivedAt, visitId }) => ({ arrivedAt, visit: visitOf(visitId) })),
        }
      })
  const [vendors, jobs] = [byId(rows.Vendor), byId(rows.Job)]
  return rows.SupplyOrder.sort((a, b) => a.createdAt.getTime() - b.createdAt.getTime()).map((order) => ({
    ...order,
    vendor: there(vendors.get(order.vendorId)),
    job: order.jobId === null ? null : there(jobs.get(order.jobId)),
    promises: rows.SupplyPromise.filter(({ orderId }) => orderId === order.id).sort(
      (a, b) => a.at.getTime() - b.at.getTime(),
    ),
    lines: linesOf(order.id),
  }))
}

type Tables = Rows<keyof typeof tables>
type Line = SupplyToShow['lines'][number]

function visitIn(rows: Tables): (id: string) => Line['heads'][number]['visit'] {
  const [visitsById, jobs] = [byId(rows.Visit), byId(rows.Job)]
  return (id) => {
    const { headId, position, jobId } = there(visitsById.get(id))
    return {
      id,
      headId,
      position,
      job: there(jobs.get(jobId)),
      head: { tags: rows.TagAssignment.filter((tag) => tag.headId === headId) },
      place: rows.VisitPlace.find(({ visitId }) => visitId === id) ?? null,
    }
  }
}

function variantIn({ CastingVariant, CastingRecord }: Tables, id: string | null): Line['variant'] {
  const variant = CastingVariant.find((one) => one.id === id)
  const casting = CastingRecord.find((one) => one.id === variant?.castingId)
  return variant && casting ? { nominalText: variant.nominalText, casting: { name: casting.name } } : null
}

type WithId = { readonly id: string }

const inOrderOfIds = (a: WithId, b: WithId): number => (a.id < b.id ? -1 : 1)
