import { unstable_isUnrecognizedActionError as isFromAnotherBuild, unstable_rethrow as rethrow } from 'next/navigation'
import type { Refusal, Result } from '@/lib/core/errors'

export type ActionCall<Input> = { op: string; input: Input }
export type ServerAction<Input, Value> = (call: ActionCall<Input>) => Promise<Result<Value>>

/** `answered`: the server decided, so the attempt is over. Otherwise the same attempt may be sent again. */
export type Answer<Value> = { answered: true; result: Result<Value> } | { answered: false; refusal: Refusal }

/**
 * Calls an action and turns whatever stops it into words. Redirects and the like, which travel as errors, are passed on
 * after `onRedirect`.
 */
export async function callAction<Input, Value>(
  action: ServerAction<Input, Value>,
  call: ActionCall<Input>,
  onRedirect: () => void = () => {},
): Promise<Answer<Value>> {
  try {
    return { answered: true, result: await action(call) }
  } catch (error) {
    if (isRedirect(error)) onRedirect()
    rethrow(error)
    return { answered: false, refusal: { code: 'failed', message: messageFor(error) } }
  }
}

function isRedirect(error: unknown): boolean {
  return (
    typeof error === 'object' && error !== null && 'digest' in error && String(error.digest).startsWith('NEXT_REDIRECT')
  )
}

function messageFor(error: unknown): string {
  if (isFromAnotherBuild(error)) {
    return 'Not sent: Brasstag was renewed since this page was opened. Note what you typed, reload the page and send it again.'
  }
  // fetch reports every failure to reach the server as a TypeError.
  if (error instanceof TypeError || !navigator.onLine) return 'Not sent: no connection. Nothing typed is lost.'
  return 'Not saved: the server failed to answer. Nothing typed is lost; send it again in a moment.'
}
