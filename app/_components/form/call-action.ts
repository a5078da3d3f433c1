import { unstable_isUnrecognizedActionError as isFromAnotherBuild, unstable_rethrow as rethrow } from 'next/navigation'
import type { Refusal, Result } from '@/lib/core/errors'
import type { ActionCall } from './operation-ids'

export type ServerAction<Input, Value> = (call: ActionCall<Input>) => Promise<Result<Value>>

/**
 * `taken`: done. `refused`: the server decided, so the attempt is over. `moved`: done, and the server sent the page to go
 * on with. `lost`: no answer, or none of the database behind it, so the same attempt may be sent again.
 */
export type Answer<Value> =
  | { readonly kind: 'taken'; readonly value: Value }
  | { readonly kind: 'refused' | 'lost'; readonly refusal: Refusal }
  | { readonly kind: 'moved' }

/** An upload whose answer did not come, in words for the person. */
export class LostError extends Error {}

/** Calls an action and turns whatever stops it into words. */
export async function callAction<Input, Value>(
  action: ServerAction<Input, Value>,
  call: ActionCall<Input>,
): Promise<Answer<Value>> {
  try {
    const result = await action(call)
    if (result.ok) return { kind: 'taken', value: result.value }
    return { kind: result.refusal.code === 'unavailable' ? 'lost' : 'refused', refusal: result.refusal }
  } catch (error) {
    // The router has gone there already.
    if (isRedirect(error)) return { kind: 'moved' }
    rethrow(error)
    return { kind: 'lost', refusal: { code: 'failed', message: messageFor(error) } }
  }
}

function isRedirect(error: unknown): boolean {
  return (
    typeof error === 'object' && error !== null && 'digest' in error && String(error.digest).startsWith('NEXT_REDIRECT')
  )
}

function messageFor(error: unknown): string {
  if (error instanceof LostError) return error.message
  if (isFromAnotherBuild(error)) {
    return 'Not sent: Brasstag was updated. Copy what you typed, reload the page and send it again.'
  }
  // fetch reports every failure to reach the server as a TypeError.
  if (error instanceof TypeError || !navigator.onLine) return 'Not sent: no connection. Nothing typed is lost.'
  return 'Not saved: the server did not answer. Nothing typed is lost. Try again in a moment.'
}
