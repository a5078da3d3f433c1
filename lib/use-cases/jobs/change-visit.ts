import { RefusedError } from '@/lib/core/errors'
import { typedFigure } from '@/lib/core/units/typed-figure'
import { changesBetween, lastChange } from '@/lib/data/audit-trail'
import { bumpVisit, visitById } from '@/lib/data/visits'
import { refreshRoute } from '@/lib/dossier/refresh'
import type { Write } from '@/lib/data/write'
import type { ChangeJobInput } from '@/lib/schemas/job'
import { refuseReleased } from '@/lib/dossier/refuse-closed'
import { refuseWithoutReason, said } from './change-reason'
import { refuseConflict } from './refuse-conflict'

const labels = { target: 'target', side: 'side', rackPlace: 'rack location' }

/** One head of the job: 1 when something changed, 0 when it already said so. */
export async function changeVisit(
  ctx: Write,
  jobId: string,
  input: ChangeJobInput['visits'][number],
  { field, reason }: { readonly field: string; readonly reason: string },
): Promise<number> {
  const visit = await visitById(ctx.tx, input.visitId)
  if (visit.jobId !== jobId) {
    throw new RefusedError({
      code: 'not-found',
      message: 'This head is not on this job.',
      fields: { [field]: 'Not on this job.' },
    })
  }
  const { target, side, rackPlace } = input
  const changes = changesBetween(
    {
      target: typedFigure({ text: visit.targetText, unit: visit.targetUnit }),
      side: visit.side,
      rackPlace: visit.rackPlace,
    },
    { target: target ? typedFigure(target) : '', side, rackPlace },
  )
  if (Object.keys(changes).length === 0) return 0
  refuseReleased(visit)
  if ('target' in changes) refuseWithoutReason(reason)
  if (visit.version !== input.version) {
    refuseConflict('this head', await lastChange(ctx.tx, 'visit', visit.id), changes, labels, `${field}.`)
  }
  await bumpVisit(ctx.tx, visit)
  await ctx.tx.visit.update({
    where: { id: visit.id },
    data: {
      targetCc: target?.value ?? null,
      targetText: target?.text ?? '',
      targetUnit: target?.unit ?? '',
      side,
      rackPlace,
    },
  })
  ctx.audit({
    action: 'visit.change',
    subjectId: visit.id,
    jobId,
    visitId: visit.id,
    changes: said(changes, reason),
  })
  await refreshRoute(ctx.tx, visit.id, ctx.now)
  return 1
}
