import { notFound } from 'next/navigation'
import { RefusedError } from '@/lib/core/errors'

/** What the page shows; the page that says there is nothing here when there is not. */
export async function orNotFound<T>(seen: Promise<T>): Promise<T> {
  try {
    return await seen
  } catch (error) {
    if (error instanceof RefusedError && error.refusal.code === 'not-found') notFound()
    throw error
  }
}
