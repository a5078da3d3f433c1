import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { Reader } from './db'
import { mapPage, pageOfRows, pageSize, rowsOfPage, type Paged } from './paging'
import { readTables, type Row } from './tables'

export const noSuchCustomer = (): RefusedError =>
  new RefusedError({ code: 'not-found', message: 'There is no such customer here.' })

export async function customerById(reader: Reader, id: string) {
  const customer = await reader.customer.findUnique({ where: { id }, include: { contact: true } })
  if (!customer?.contact) throw noSuchCustomer()
  return { ...customer, contact: customer.contact }
}

/** Jobs to a page of a customer, with all that belongs to them. */
const jobsOnPage = 50

const ofJobs = '"jobId" IN (SELECT "id" FROM "j")'
const heads = `(SELECT "headId" FROM "Visit" WHERE ${ofJobs})`
const ofVisits = `"visitId" IN (SELECT "id" FROM "Visit" WHERE ${ofJobs})`

const tables = {
  Job: '"id" IN (SELECT "id" FROM "j")',
  Visit: ofJobs,
  VisitPlace: ofVisits,
  Head: `"id" IN ${heads}`,
  TagAssignment: `"headId" IN ${heads} AND "to" IS NULL`,
  Finding: ofVisits,
  CallEntry: ofJobs,
  Message: ofJobs,
  Payment: ofJobs,
  PaymentVoid: `"paymentId" IN (SELECT "id" FROM "Payment" WHERE ${ofJobs})`,
}

/** A page of a customer's jobs, the newest first, and what was brought, found, said and paid on them. One statement. */
export function recordOfCustomer(reader: Reader, customerId: string, page: number) {
  const newest = `SELECT "id" FROM "Job" WHERE "customerId" = ? ORDER BY "createdAt" DESC, "id" DESC`
  const sql = `"j" AS (SELECT "id" FROM (${newest} LIMIT ${jobsOnPage} OFFSET ${(page - 1) * jobsOnPage}) "newest")`
  return readTables(reader, { sql, params: [customerId] }, tables)
}

export const hasMoreJobs = (count: number, page: number): boolean => count > page * jobsOnPage

/** Invoices, credit notes and receipts of these jobs, the newest first; not what they say, which is long. */
export const papersOfJobs = (reader: Reader, jobIds: readonly string[]) =>
  reader.moneyPaper.findMany({
    where: { jobId: { in: [...jobIds] } },
    orderBy: { at: 'desc' },
    select: { id: true, kind: true, number: true, jobId: true, paymentId: true, totalMinor: true, at: true },
  })

/** Of all jobs: how many, how many are open, and what is owed on them. */
export async function sumsOfCustomer(reader: Reader, customerId: string) {
  const all = await reader.job.aggregate({ where: { customerId }, _count: true, _sum: { dueMinor: true } })
  const open = await reader.job.count({ where: { customerId, visits: { some: stillHere } } })
  return { jobs: all._count, open, owedMinor: all._sum.dueMinor ?? 0 }
}

const stillHere = {
  NOT: { place: { whereabouts: { in: ['handed over', 'scrapped', 'taken off'] } } },
}

export type ListedCustomer = Pick<Row<'CustomerContact'>, 'name' | 'phone' | 'email'> & {
  readonly id: string
  readonly jobs: number
  readonly owedMinor: number
  readonly lastJobAt: Date | null
}

/** A page of customers by name; of those with these ids, in their order, when something was looked for. */
export async function listCustomers(
  reader: Reader,
  page: number,
  ids: readonly string[] | null,
): Promise<Paged<ListedCustomer>> {
  const select = { customerId: true, name: true, phone: true, email: true }
  const found = await reader.customerContact.findMany({
    // From the first name on: so the index by name is read, and no further than the page.
    where: ids ? { customerId: { in: [...ids] } } : { nameLower: { gte: '' }, customer: { mergedIntoId: null } },
    orderBy: [{ nameLower: 'asc' }, { customerId: 'asc' }],
    ...rowsOfPage(page),
    select,
  })
  const place = new Map(ids?.map((id, at) => [id, at]))
  const rows = ids ? found.toSorted((a, b) => (place.get(a.customerId) ?? 0) - (place.get(b.customerId) ?? 0)) : found
  const paged = pageOfRows(rows)
  const sums = await reader.job.groupBy({
    by: ['customerId'],
    where: { customerId: { in: paged.rows.map(({ customerId }) => customerId) } },
    _count: true,
    _sum: { dueMinor: true },
    _max: { createdAt: true },
  })
  const byId = new Map(sums.map((sum) => [sum.customerId, sum]))
  return mapPage(paged, ({ customerId: id, ...contact }) => ({
    ...{ id, ...contact },
    jobs: byId.get(id)?._count ?? 0,
    owedMinor: byId.get(id)?._sum.dueMinor ?? 0,
    lastJobAt: byId.get(id)?._max.createdAt ?? null,
  }))
}

/** Merges into and away from a customer that stand, the newest first. */
export const mergesOf = (reader: Reader, customerId: string) =>
  reader.customerMerge.findMany({
    where: { intoId: customerId, undoneAt: null },
    orderBy: { at: 'desc' },
    take: pageSize,
    include: { from: { select: { contact: { select: { name: true, phone: true } } } } },
  })

/** The next thousand by id, for a file of all. */
export const customersAfter = (reader: Reader, id: string) =>
  reader.customerContact.findMany({
    where: { customerId: { gt: id }, blankedAt: null, customer: { mergedIntoId: null } },
    orderBy: { customerId: 'asc' },
    take: 1000,
    include: { customer: { select: { createdAt: true } } },
  })

/** The customer and all that were merged into it, however many merges ago. */
export async function withMergedIds(reader: Reader, id: string): Promise<string[]> {
  const merged = await reader.customer.findMany({ where: { mergedIntoId: id }, select: { id: true } })
  const further = await Promise.all(merged.map((one) => withMergedIds(reader, one.id)))
  return [id, ...further.flat()]
}

/** Ids and numbers of a customer's jobs; of these alone, when some are named. */
export const jobsOfCustomer = (reader: Reader, customerId: string, ids?: readonly string[]) =>
  reader.job.findMany({
    where: { customerId, ...(ids ? { id: { in: [...ids] } } : {}) },
    orderBy: { number: 'asc' },
    select: { id: true, number: true },
  })

export async function mergeById(reader: Reader, id: string) {
  const merge = await reader.customerMerge.findUnique({ where: { id } })
  if (!merge) throw noSuchCustomer()
  return merge
}
