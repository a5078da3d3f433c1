import type { Refusal } from '@/lib/core/errors'
import { refusalOf } from '@/lib/web/error-to-response'

/** What the person at the screen is told of a deed that fails. */
export const refusedAsOnScreen = (work: PromiseLike<unknown>): Promise<Refusal> =>
  Promise.resolve(work).then(() => {
    throw new Error('It was to be refused.')
  }, refusalOf)
