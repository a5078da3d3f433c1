import 'server-only'
import type { Prisma } from '@/prisma/generated/sqlite/client'
import type { Reader } from './db'
import { readTables, type Row } from './tables'
import { beginsWith } from './text-range'

/** A job in an answer of the Find box. */
export type FoundJob = Pick<Row<'Job'>, 'number' | 'promiseOn'> & {
  readonly customer: string
  readonly phone: string
  /** Tags that its heads wear, and where they are, by their place on the job. */
  readonly tags: readonly string[]
  readonly whereabouts: readonly string[]
}

const ofJobs = '"jobId" IN (SELECT "id" FROM "j")'
const tables = {
  Job: '"id" IN (SELECT "id" FROM "j")',
  CustomerContact: '"customerId" IN (SELECT "customerId" FROM "Job" WHERE "id" IN (SELECT "id" FROM "j"))',
  Visit: ofJobs,
  VisitPlace: `"visitId" IN (SELECT "id" FROM "Visit" WHERE ${ofJobs})`,
  TagAssignment: `"headId" IN (SELECT "headId" FROM "Visit" WHERE ${ofJobs}) AND "to" IS NULL`,
}

/** Those with one of these numbers first, then jobs whose number begins so and jobs of these customers: the newest first. */
export async function jobsFound(
  reader: Reader,
  by: { customerIds: readonly string[]; numbers: readonly string[]; begins: string },
  take: number,
): Promise<FoundJob[]> {
  const newest = (where: Prisma.JobWhereInput) =>
    reader.job.findMany({ where, orderBy: { number: 'desc' }, take, select: { id: true, number: true } })
  const named = by.numbers.length === 0 ? [] : await newest({ number: { in: [...by.numbers] } })
  const begun = /^\d{2}-\d{0,6}$/.test(by.begins) ? await newest({ number: beginsWith(by.begins) }) : []
  const theirs = by.customerIds.length === 0 ? [] : await newest({ customerId: { in: [...by.customerIds] } })
  const others = [...begun, ...theirs].toSorted((a, b) => (a.number < b.number ? 1 : -1))
  const found = distinctById([...named, ...others]).slice(0, take)
  if (found.length === 0) return []
  const scope = `"j" AS (SELECT "id" FROM "Job" WHERE "id" IN (${found.map(() => '?').join(', ')}))`
  const rows = await readTables(reader, { sql: scope, params: found.map(({ id }) => id) }, tables)
  const place = new Map(found.map(({ id }, at) => [id, at]))
  const inOrder = rows.Job.sort((a, b) => (place.get(a.id) ?? 0) - (place.get(b.id) ?? 0))
  return inOrder.map(({ id, number, promiseOn, customerId }) => {
    const contact = rows.CustomerContact.find((one) => one.customerId === customerId)
    const visits = rows.Visit.filter(({ jobId }) => jobId === id).sort((a, b) => a.position - b.position)
    const ofEach = <T extends object, V>(
      all: readonly T[],
      isOf: (row: T, visit: Row<'Visit'>) => boolean,
      of: (row: T) => V,
    ) => visits.flatMap((visit) => all.filter((row) => isOf(row, visit)).map(of))
    return {
      number,
      promiseOn,
      customer: contact?.name ?? '',
      phone: contact?.phone ?? '',
      tags: ofEach(
        rows.TagAssignment,
        (tag, visit) => tag.headId === visit.headId,
        (tag) => tag.number,
      ),
      whereabouts: ofEach(
        rows.VisitPlace,
        (place, visit) => place.visitId === visit.id,
        (place) => place.whereabouts,
      ),
    }
  })
}

const distinctById = <T extends { readonly id: string }>(rows: readonly T[]): T[] => [
  ...new Map(rows.map((row) => [row.id, row])).values(),
]
