import { allow, can } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { noRules } from '@/lib/core/route/rules'
import { must } from '@/lib/core/errors'
import { db, type Reader } from '@/lib/data/db'
import { readFile } from '@/lib/data/files'
import { deadLink, openLink } from '@/lib/data/links'
import { namesOf } from '@/lib/data/people'
import {
  photoById,
  photoOfFinding,
  photosOfFinding,
  photosOfHead,
  photosOfOrder,
  photosOfVisit,
  type PhotoRecord,
} from '@/lib/data/photos'
import { smallPicture } from '@/lib/data/pictures'
import { currentRules } from '@/lib/data/settings'
import { shopOf } from '@/lib/data/shop'
import { smallEdgePx } from '@/lib/schemas/photo-limits'
import { isOnLink } from '@/lib/dossier/question'
import { photoViews, type PhotoView } from './photo-view'

export type PhotoSize = 'full' | 'small'

async function bytesOf(sha256: string, size: PhotoSize): Promise<Uint8Array<ArrayBuffer>> {
  const bytes = await readFile(sha256)
  return size === 'small' ? smallPicture(bytes, smallEdgePx) : bytes
}

/** The picture itself, for staff. */
export async function seePicture(actor: Actor, photoId: string, size: PhotoSize): Promise<Uint8Array<ArrayBuffer>> {
  must(allow(actor, 'job.see'))
  const { sha256 } = await photoById(await db(), photoId)
  return bytesOf(sha256, size)
}

/** The picture of a finding that its customer was asked about, for whoever holds the link to that job. */
export async function seePictureByLink(
  token: string,
  photoId: string,
  size: PhotoSize,
  now: Date,
): Promise<Uint8Array<ArrayBuffer>> {
  const client = await db()
  const { jobId } = await openLink(client, token, now)
  const photo = await photoOfFinding(client, photoId)
  if (!photo?.finding || photo.visit.jobId !== jobId || !isOnLink(photo.finding, photo.visit)) throw deadLink()
  return bytesOf(photo.sha256, size)
}

/** The photos of one outside order: the vendor's marks, and whatever else was seen when it came back. */
export const seeOrderPhotos = (actor: Actor, orderId: string, now: Date): Promise<Shown> =>
  shown(actor, (reader) => photosOfOrder(reader, orderId), now)

/** All photos of a head, over all its visits. */
export const seeHeadPhotos = (actor: Actor, headId: string, now: Date): Promise<Shown> =>
  shown(actor, (reader) => photosOfHead(reader, headId), now)

/** The photos of one visit: its steps', its findings', its holds'. */
export const seeVisitPhotos = (actor: Actor, visitId: string, now: Date): Promise<Shown> =>
  shown(actor, (reader) => photosOfVisit(reader, visitId), now)

/** The photos of one finding. */
export const seeFindingPhotos = (actor: Actor, findingId: string, now: Date): Promise<Shown> =>
  shown(actor, (reader) => photosOfFinding(reader, findingId), now)

export type Shown = {
  readonly photos: readonly PhotoView[]
  readonly mayAdd: boolean
  readonly timeZone: string
  readonly locale: string
}

async function shown(actor: Actor, read: (reader: Reader) => Promise<PhotoRecord[]>, now: Date): Promise<Shown> {
  must(allow(actor, 'job.see'))
  const client = await db()
  const [photos, { timeZone, locale }] = await Promise.all([read(client), shopOf(client)])
  const names = photos.length === 0 ? new Map<string, string>() : await namesOf(photos.map(({ byId }) => byId))
  const name = (id: string): string => names.get(id) ?? ''
  const rules = photos.length === 0 ? noRules : await currentRules(client)
  return {
    photos: photoViews(photos, { actor, now, timeZone, name, rules }),
    mayAdd: can(actor, 'photo.add'),
    timeZone,
    locale,
  }
}
