import 'server-only'
import { db } from './db'

/** Sequence number of the newest audit entry; 0 in an empty shop. */
export async function newestChange(): Promise<number> {
  const row = await (await db()).auditEntry.findFirst({ orderBy: { seq: 'desc' }, select: { seq: true } })
  return row?.seq ?? 0
}
