import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { Prisma } from '@/prisma/generated/sqlite/client'
import type { Reader } from './db'
import { addFileRow, type StoredFile } from './files'
import { newId } from './ids'
import { conflictUnless, type Write } from './write'

export type PhotoRecord = Prisma.PhotoGetPayload<object>

const noSuchPhoto = (): RefusedError => new RefusedError({ code: 'not-found', message: 'There is no such photo here.' })

type NewPhoto = Pick<
  PhotoRecord,
  'visitId' | 'stepId' | 'occurrence' | 'orderId' | 'findingId' | 'holdId' | 'caption' | 'widthPx' | 'heightPx'
>

/** The row of a photo and of its file; the bytes are on the disk already. */
export async function addPhotoRow(ctx: Write, file: StoredFile, photo: NewPhoto): Promise<string> {
  await addFileRow(ctx.tx, file, 'image/jpeg', ctx.now)
  const id = newId(ctx.now)
  await ctx.tx.photo.create({ data: { ...photo, id, sha256: file.sha256, at: ctx.now, byId: ctx.actor.personId } })
  return id
}

/** A photo that is still shown. */
export async function photoById(reader: Reader, id: string): Promise<PhotoRecord> {
  const photo = await reader.photo.findUnique({ where: { id } })
  if (photo && photo.withdrawnAt === null) return photo
  throw noSuchPhoto()
}

/** The row stays and says who took it away, and why. */
export async function withdrawPhotoRow(ctx: Write, id: string, why: string): Promise<void> {
  const changed = await ctx.tx.photo.updateMany({
    where: { id, withdrawnAt: null },
    data: { withdrawnAt: ctx.now, withdrawnById: ctx.actor.personId, withdrawnWhy: why },
  })
  conflictUnless(changed, 'this photo')
}

/** The newest of one place: more than anybody takes of one head. */
const mostShown = 500

async function shown(reader: Reader, where: Prisma.PhotoWhereInput): Promise<PhotoRecord[]> {
  const orderBy = [{ at: 'desc' }, { id: 'desc' }] as const
  const newest = { where: { ...where, withdrawnAt: null }, orderBy: [...orderBy], take: mostShown }
  return (await reader.photo.findMany(newest)).reverse()
}

/** Those that are still shown, the oldest first. */
export const photosOfOrder = (reader: Reader, orderId: string) => shown(reader, { orderId })
export const photosOfFinding = (reader: Reader, findingId: string) => shown(reader, { findingId })
export const photosOfVisit = (reader: Reader, visitId: string) => shown(reader, { visitId })
export const photosOfHead = (reader: Reader, headId: string) => shown(reader, { visit: { headId } })

/** A photo of a finding with what decides whether its customer sees it. */
export const photoOfFinding = (reader: Reader, id: string) =>
  reader.photo.findFirst({
    where: { id, withdrawnAt: null, findingId: { not: null } },
    select: {
      sha256: true,
      finding: { select: { askedAt: true, answer: true } },
      visit: {
        select: {
          jobId: true,
          scrappedAt: true,
          takenOffAt: true,
          returned: { select: { visitId: true } },
          handOver: { select: { visitId: true } },
          releases: { select: { id: true }, take: 1 },
        },
      },
    },
  })

/** Refuses a finding, a hold or an order that is not of this visit: an id alone proves nothing. */
export async function refuseForeignPart(
  reader: Reader,
  { visitId, findingId, holdId, orderId }: Pick<NewPhoto, 'visitId' | 'findingId' | 'holdId' | 'orderId'>,
): Promise<void> {
  const counts = [
    findingId === null ? 1 : await reader.finding.count({ where: { id: findingId, visitId } }),
    holdId === null ? 1 : await reader.hold.count({ where: { id: holdId, visitId } }),
    orderId === null ? 1 : await reader.outsideOrderVisit.count({ where: { orderId, visitId } }),
  ]
  if (counts.includes(0)) {
    throw new RefusedError({
      code: 'not-found',
      message: 'This photo belongs to another head’s record. Reload the page and add it again.',
    })
  }
}
