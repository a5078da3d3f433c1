import { can } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import type { RouteRules } from '@/lib/core/route/rules'
import { stepLabel } from '@/lib/core/route/table'
import type { StepId } from '@/lib/core/route/step-ids'
import { dayIn } from '@/lib/core/shop/calendar'
import type { PhotoRecord } from '@/lib/data/photos'

/** One photo as staff see it. */
export type PhotoView = {
  readonly id: string
  readonly visitId: string
  readonly stepId: string
  readonly occurrence: string
  readonly orderId: string | null
  readonly findingId: string | null
  readonly holdId: string | null
  /** What it is of, in the words of its step. */
  readonly of: string
  readonly caption: string
  readonly by: string
  /** ISO 8601. */
  readonly at: string
  readonly widthPx: number
  readonly heightPx: number
  readonly mayWithdraw: boolean
}

export type PhotoReader = {
  readonly actor: Actor
  readonly now: Date
  readonly timeZone: string
  readonly name: (personId: string) => string
  /** By which steps are named. */
  readonly rules: RouteRules
}

/** Whoever took it, on the day it was taken, or the owner. */
export const mayWithdraw = (
  actor: Actor,
  photo: Pick<PhotoRecord, 'byId' | 'at'>,
  now: Date,
  timeZone: string,
): boolean =>
  can(actor, 'photo.withdraw') ||
  (can(actor, 'photo.add') && photo.byId === actor.personId && dayIn(timeZone, photo.at) === dayIn(timeZone, now))

export const photoViews = (photos: readonly PhotoRecord[], reader: PhotoReader): PhotoView[] =>
  photos.map((photo) => ({
    id: photo.id,
    visitId: photo.visitId,
    stepId: photo.stepId,
    occurrence: photo.occurrence,
    orderId: photo.orderId,
    findingId: photo.findingId,
    holdId: photo.holdId,
    of: ofWhat(photo, reader.rules),
    caption: photo.caption,
    by: reader.name(photo.byId),
    at: photo.at.toISOString(),
    widthPx: photo.widthPx,
    heightPx: photo.heightPx,
    mayWithdraw: mayWithdraw(reader.actor, photo, reader.now, reader.timeZone),
  }))

function ofWhat({ stepId, findingId, holdId }: PhotoRecord, rules: RouteRules): string {
  const step = stepId === '' ? 'The head' : stepLabel(stepId as StepId, rules)
  if (findingId !== null) return `${step}: a finding`
  return holdId === null ? step : `${step}: held`
}
