import 'server-only'
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

/** Jobs of these customers, and those whose number begins so: the newest first. Two statements. */
export async function jobsFound(
  reader: Reader,
  by: { customerIds: readonly string[]; number: string },
  take: number,
): Promise<FoundJob[]> {
  const byNumber = /^\d{2}-\d{0,6}$/.test(by.number) ? [{ number: beginsWith(by.number) }] : []
  const found = await reader.job.findMany({
    where: { OR: [{ customerId: { in: [...by.customerIds] } }, ...byNumber] },
    orderBy: { number: 'desc' },
    take,
    select: { id: true },
  })
  if (found.length === 0) return []
  const scope = `"j" AS (SELECT "id" FROM "Job" WHERE "id" IN (${found.map(() => '?').join(', ')}))`
  const rows = await readTables(reader, { sql: scope, params: found.map(({ id }) => id) }, tables)
  return rows.Job.sort((a, b) => (a.number < b.number ? 1 : -1)).map(({ id, number, promiseOn, customerId }) => {
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
