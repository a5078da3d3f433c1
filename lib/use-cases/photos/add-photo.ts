import { allow, readAction } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { photoTaken } from '@/lib/core/readings/photo-answer'
import type { StepKey } from '@/lib/core/route/step-ids'
import { db, type Reader } from '@/lib/data/db'
import type { VisitRecord } from '@/lib/data/visit-records'
import { storeFile } from '@/lib/data/files'
import { addPhotoRow, refuseForeignPart } from '@/lib/data/photos'
import { readPicture } from '@/lib/data/pictures'
import { bumpVisit, visitById } from '@/lib/data/visits'
import { loadDossier } from '@/lib/dossier/dossier'
import { refreshRoute } from '@/lib/dossier/refresh'
import { answerOfOperation, write, type Moment, type Write } from '@/lib/data/write'
import { type AddPhotoInput } from '@/lib/schemas/photo'
import { longestEdgePx, mostUploadBytes } from '@/lib/schemas/photo-limits'
import { addReadings, nothingConfirmed } from '@/lib/dossier/add-readings'
import { refuseClosed, refuseOnOrder } from '@/lib/dossier/refuse-closed'

export type AddedPhoto = { readonly photoId: string }

type NewPhoto = Omit<AddPhotoInput, 'sha256' | 'findingOp' | 'holdOp'> &
  Partial<Pick<AddPhotoInput, 'findingOp' | 'holdOp'>> & { readonly bytes: Uint8Array }

/** What an operation of the same device made before this photo was sent. */
async function madeBy(reader: Reader, actor: Actor, operation: string, name: string): Promise<string> {
  const answer = await answerOfOperation(reader, actor, operation)
  const id =
    typeof answer === 'object' && answer !== null ? Object.entries(answer).find(([key]) => key === name)?.[1] : null
  if (typeof id === 'string') return id
  throw new RefusedError({
    code: 'not-found',
    message: 'What this photo belongs to was not taken, so it was not kept.',
  })
}

/**
 * Keeps a photo of a head: of a step, of a finding, of a hold or of a vendor's marks. The picture is read and stored
 * before the transaction; a file that no row points at does no harm. The first at check-in answers the check-in's
 * question for it.
 */
export async function addPhoto(
  actor: Actor,
  { bytes, findingOp, holdOp, ...asked }: NewPhoto,
  moment: Moment,
): Promise<AddedPhoto> {
  must(allow(actor, 'photo.add'))
  refuseLarge(bytes)
  const client = await db()
  const input = {
    ...asked,
    findingId: findingOp ? await madeBy(client, actor, findingOp, 'findingId') : asked.findingId,
    holdId: holdOp ? await madeBy(client, actor, holdOp, 'holdId') : asked.holdId,
  }
  refuseUnlessHere(await visitById(client, input.visitId))
  await refuseForeignPart(client, input)
  const picture = await readPicture(bytes, longestEdgePx)
  const file = await storeFile(picture.bytes)
  return write(actor, moment, async (ctx) => {
    const visit = await visitById(ctx.tx, input.visitId)
    refuseUnlessHere(visit)
    const { widthPx, heightPx } = picture
    const photoId = await addPhotoRow(ctx, file, { ...input, widthPx, heightPx })
    ctx.audit({
      action: 'photo.add',
      subjectId: photoId,
      jobId: visit.jobId,
      visitId: visit.id,
      changes: { step: input.stepId, of: ofWhat(input) },
    })
    await answerCheckIn(ctx, visit, input)
    return { photoId }
  })
}

function ofWhat({ findingId, holdId, orderId }: Pick<AddPhotoInput, 'findingId' | 'holdId' | 'orderId'>): string {
  if (findingId !== null) return 'a finding'
  if (holdId !== null) return 'a hold'
  return orderId === null ? '' : 'an outside order'
}

function refuseLarge({ byteLength }: Uint8Array): void {
  if (byteLength <= mostUploadBytes) return
  throw new RefusedError({
    code: 'out-of-range',
    message: `This file is larger than ${mostUploadBytes / 1024 / 1024} MB. Take the photo again with a smaller setting.`,
  })
}

function refuseUnlessHere(visit: VisitRecord): void {
  refuseClosed(visit)
  refuseOnOrder(visit)
}

/** That the photo was taken is a reading like any other, so that whoever asks for readings need not know of photos. */
async function answerCheckIn(ctx: Write, visit: VisitRecord, { stepId, occurrence }: AddPhotoInputAt): Promise<void> {
  if (stepId !== 'check-in' || visit.releases.length > 0) return
  const { readings, route } = await loadDossier(ctx.tx, visit.id)
  const standing = readings.findLast(({ kind }) => kind === 'photo')
  if (standing?.text === photoTaken) return
  const key: StepKey = { stepId, occurrence, orderId: null }
  const step = route.find((one) => one.stepId === key.stepId && one.occurrence === key.occurrence)
  if (!step || step.state === 'not needed') return
  must(allow(ctx.actor, readAction(step.station)))
  await bumpVisit(ctx.tx, visit)
  await addReadings(
    ctx,
    visit,
    step,
    {
      readings: [{ kind: 'photo', point: '', text: photoTaken, notTaken: null }],
      instrumentId: null,
      conditions: {},
      takenAt: null,
    },
    nothingConfirmed,
  )
  await refreshRoute(ctx.tx, visit.id, ctx.now)
}

type AddPhotoInputAt = Pick<AddPhotoInput, 'stepId' | 'occurrence'>
