import { RefusedError } from '@/lib/core/errors'
import { saysNoPhoto } from '@/lib/core/readings/photo-answer'
import type { ReadingKind } from '@/lib/core/readings/types'
import type { StepKey } from '@/lib/core/route/step-ids'
import type { VisitRecord } from '@/lib/data/visit-records'

type Answer = { readonly kind: ReadingKind; readonly text: string }

/** The question for a photo is answered by a photo; in words only by why there is none. */
export function refusePhotoInWords(
  visit: Pick<VisitRecord, 'photos'>,
  step: Pick<StepKey, 'stepId'>,
  answers: readonly Answer[],
): void {
  const claimed = answers.filter(({ kind, text }) => kind === 'photo' && text !== '' && !saysNoPhoto(text))
  if (claimed.length === 0) return
  const there = visit.photos.some(({ stepId, withdrawnAt }) => stepId === step.stepId && withdrawnAt === null)
  if (there) return
  const message = 'A photo is needed. Take one, or enter “no photo: ” and the reason.'
  throw new RefusedError({ code: 'owed', message, fields: { 'photo|': message } })
}
