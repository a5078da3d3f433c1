import { forbidden, notFound } from 'next/navigation'
import { RefusedError } from '@/lib/core/errors'

/** What a page shows of a refusal: no such thing → 404, not for this person → 403; anything else is an error. */
export async function orNotFound<T>(view: Promise<T>): Promise<T> {
  try {
    return await view
  } catch (error) {
    if (error instanceof RefusedError && error.refusal.code === 'not-found') notFound()
    if (error instanceof RefusedError && error.refusal.code === 'not-allowed') forbidden()
    throw error
  }
}
