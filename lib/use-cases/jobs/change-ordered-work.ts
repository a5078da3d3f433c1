import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must, RefusedError } from '@/lib/core/errors'
import { addOrderedLines, endOrderedLines } from '@/lib/data/booking'
import { bumpVisit, visitById } from '@/lib/data/visits'
import { refreshRoute } from '@/lib/dossier/refresh'
import { write, type Moment, type Write } from '@/lib/data/write'
import type { ChangeOrderedWorkInput } from '@/lib/schemas/job'
import { refuseReleased } from '@/lib/dossier/refuse-closed'
import { refuseUnknownWork } from '@/lib/dossier/refuse-unknown-work'

/** Adds and ends lines of ordered work on one or more heads of a job, with the reason in the audit. */
export async function changeOrderedWork(
  actor: Actor,
  input: ChangeOrderedWorkInput,
  moment: Moment,
): Promise<{ added: number; ended: number }> {
  must(allow(actor, 'job.change'))
  return write(actor, moment, async (ctx) => {
    let added = 0
    let ended = 0
    for (const { visitId, version } of input.visits) {
      const changed = await changeLines(ctx, input, visitId, version)
      added += changed.added
      ended += changed.ended
    }
    return { added, ended }
  })
}

async function changeLines(ctx: Write, input: ChangeOrderedWorkInput, visitId: string, version: number) {
  const visit = await visitById(ctx.tx, visitId)
  if (visit.jobId !== input.jobId) {
    throw new RefusedError({ code: 'not-found', message: 'This head is not on this job.' })
  }
  refuseReleased(visit)
  const standing = visit.ordered.filter((line) => line.endedAt === null)
  const ending = standing.filter((line) => input.end.some((work) => work === line.work))
  const adding = input.add.filter(({ work }) => !standing.some((line) => line.work === work))
  if (ending.length + adding.length === 0) return { added: 0, ended: 0 }
  await refuseUnknownWork(
    ctx.tx,
    visit,
    adding.map(({ work }) => work),
  )
  await bumpVisit(ctx.tx, { id: visitId, version })
  await endOrderedLines(
    ctx,
    ending.map((line) => line.id),
  )
  await addOrderedLines(ctx, visitId, adding)
  ctx.audit({
    action: 'visit.order-work',
    subjectId: visitId,
    jobId: input.jobId,
    visitId,
    changes: { added: adding, ended: ending.map((line) => line.work), reason: input.reason },
  })
  await refreshRoute(ctx.tx, visitId, ctx.now)
  return { added: adding.length, ended: ending.length }
}
