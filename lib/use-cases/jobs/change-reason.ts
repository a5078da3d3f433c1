import { RefusedError } from '@/lib/core/errors'

/** A promise or a target that changes needs a reason: the customer may ask for it. */
export function refuseWithoutReason(reason: string): void {
  if (reason !== '') return
  const message = 'Enter why the promise or the target changes.'
  throw new RefusedError({ code: 'invalid', message, fields: { reason: message } })
}

/** Changes as the trail has them, with the reason where one was given. */
export const said = (changes: Readonly<Record<string, unknown>>, reason: string): Readonly<Record<string, unknown>> =>
  reason === '' ? changes : { ...changes, reason }
