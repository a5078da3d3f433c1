import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { photoTaken } from '@/lib/core/readings/photo-answer'
import { photoById, withdrawPhotoRow, type PhotoRecord } from '@/lib/data/photos'
import { shopOf } from '@/lib/data/shop'
import { bumpVisit } from '@/lib/data/visits'
import { loadDossier, type Dossier } from '@/lib/dossier/dossier'
import { refreshRoute } from '@/lib/dossier/refresh'
import { write, type Moment, type Write } from '@/lib/data/write'
import type { WithdrawPhotoInput } from '@/lib/schemas/photo'
import { addCorrection } from '@/lib/dossier/add-correction'
import { mayWithdraw } from './photo-view'

/**
 * Of the wrong head, or of what is nobody's business: it is no longer shown to anybody, and the row says who took it
 * away and why. Whoever took it may, on the same day; after that the owner.
 */
export async function withdrawPhoto(
  actor: Actor,
  { photoId, reason }: WithdrawPhotoInput,
  moment: Moment,
): Promise<{ photoId: string }> {
  must(allow(actor, 'photo.add'))
  return write(actor, moment, async (ctx) => {
    const photo = await photoById(ctx.tx, photoId)
    const { timeZone } = await shopOf(ctx.tx)
    if (!mayWithdraw(actor, photo, ctx.now, timeZone)) must(allow(actor, 'photo.withdraw'))
    const dossier = await loadDossier(ctx.tx, photo.visitId)
    const { visit } = dossier
    await withdrawPhotoRow(ctx, photo.id, reason)
    ctx.audit({
      action: 'photo.withdraw',
      subjectId: photo.id,
      jobId: visit.jobId,
      visitId: visit.id,
      changes: { reason },
    })
    await askAgain(ctx, dossier, photo, reason)
    return { photoId: photo.id }
  })
}

/** Without its last photo the check-in's answer "taken" would be untrue. What is released stays as it was frozen. */
async function askAgain(ctx: Write, { visit, readings }: Dossier, photo: PhotoRecord, reason: string): Promise<void> {
  const left = visit.photos.filter(
    ({ id, stepId, withdrawnAt }) => id !== photo.id && stepId === 'check-in' && withdrawnAt === null,
  )
  if (photo.stepId !== 'check-in' || left.length > 0 || visit.releases.length > 0) return
  const standing = readings.findLast(({ kind }) => kind === 'photo')
  if (standing?.text !== photoTaken) return
  await bumpVisit(ctx.tx, visit)
  await addCorrection(ctx, visit, standing, { correction: 'withdraw', text: '', reason })
  await refreshRoute(ctx.tx, visit.id, ctx.now)
}
