import type { AuditAction } from '@/lib/core/audit/verbs'
import { newId } from '@/lib/data/ids'
import { bumpVisit } from '@/lib/data/visits'
import type { Write } from '@/lib/data/write'
import { refreshRoute } from './refresh'

type Visit = { readonly id: string; readonly jobId: string; readonly version: number }
type Told = { readonly action: AuditAction; readonly changes: Readonly<Record<string, unknown>> }

/** A row that changes what a head waits for: under the visit's lock, on record, and the route made anew. Gives its id. */
export async function addToHead(
  ctx: Write,
  visit: Visit,
  told: Told,
  create: (id: string) => Promise<unknown>,
): Promise<string> {
  await bumpVisit(ctx.tx, visit)
  const id = newId(ctx.now)
  await create(id)
  ctx.audit({ ...told, subjectId: id, visitId: visit.id, jobId: visit.jobId })
  await refreshRoute(ctx.tx, visit.id, ctx.now)
  return id
}
