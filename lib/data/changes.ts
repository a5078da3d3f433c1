import 'server-only'
import { db, type Reader } from './db'

/** Sequence number of the newest audit entry; 0 in an empty shop. */
export async function newestChange(): Promise<number> {
  const row = await (await db()).auditEntry.findFirst({ orderBy: { seq: 'desc' }, select: { seq: true } })
  return row?.seq ?? 0
}

/** More changes than this are not looked at one by one. */
const most = 200
/** A change of one of these may show on any head. */
const shared: readonly string[] = ['casting', 'instrument', 'person', 'settings', 'shop', 'shop-cut', 'vendor']

/** The visits on which something is another since that change, with the other heads of their pairs; null: perhaps all. */
export async function visitsChangedSince(reader: Reader, seq: number): Promise<ReadonlySet<string> | null> {
  const entries = await reader.auditEntry.findMany({
    where: { seq: { gt: seq } },
    select: { subject: true, jobId: true, visitId: true },
    take: most + 1,
  })
  if (entries.length > most || entries.some(({ subject }) => shared.includes(subject))) return null
  const ids = entries.flatMap(({ visitId }) => visitId ?? [])
  const jobs = entries.flatMap(({ visitId, jobId }) => (visitId === null ? (jobId ?? []) : []))
  if (ids.length + jobs.length === 0) return new Set()
  const visits = await reader.visit.findMany({
    where: { pair: { visits: { some: { OR: [{ id: { in: ids } }, { jobId: { in: jobs } }] } } } },
    select: { id: true },
  })
  return new Set(visits.map(({ id }) => id))
}
