import { bumpVisit, visitById } from '@/lib/data/visits'
import { refreshRoute } from './refresh'
import { bumpWait } from '@/lib/data/waits'
import type { Write } from '@/lib/data/write'

/** The parts are here: the wait ends, and the route of its head follows. */
export async function endPartsWait(
  ctx: Write,
  wait: { readonly id: string; readonly visitId: string },
  version: number,
): Promise<void> {
  await bumpWait(ctx, wait.id, version, { arrivedAt: ctx.now })
  const visit = await visitById(ctx.tx, wait.visitId)
  await bumpVisit(ctx.tx, visit)
  ctx.audit({
    action: 'parts-wait.end',
    subjectId: wait.id,
    visitId: visit.id,
    jobId: visit.jobId,
  })
  await refreshRoute(ctx.tx, visit.id, ctx.now)
}
