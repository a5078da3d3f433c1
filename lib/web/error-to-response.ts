import { RefusedError, type Refusal, type RefusalCode } from '@/lib/core/errors'
import { isMachineFault } from '@/lib/core/faults'
import { seeFault } from '@/lib/data/fault-seen'
import { errorForLog } from '@/lib/data/error-for-log'
import { faultOf } from '@/lib/data/faults'
import { faultRefusal } from '@/lib/words/faults'
import { log } from './log'
import { noteRefusal } from './note-refusal'
import { newRequestId } from './request-id'
import { currentActor } from './require-actor'

/** The one map from refusal to HTTP status. */
const status: Record<RefusalCode, number> = {
  missing: 422,
  'out-of-range': 422,
  ambiguous: 422,
  unreadable: 422,
  contradiction: 422,
  unreachable: 422,
  'measure-again': 422,
  unlikely: 422,
  impossible: 422,
  hold: 409,
  invalid: 422,
  'not-signed-in': 401,
  'ask-again': 403,
  'not-allowed': 403,
  'not-found': 404,
  'not-on-route': 404,
  conflict: 409,
  'operation-reused': 422,
  owed: 409,
  incomplete: 409,
  'wrong-state': 409,
  'too-many': 429,
  'too-large': 413,
  unavailable: 503,
  failed: 500,
}

export const statusOf = (refusal: Refusal): number => status[refusal.code]

/** What an answer's headers say of a refusal: when to come again. */
export function headersOf({ code, retryAfterS }: Refusal): Record<string, string> {
  const seconds = retryAfterS ?? (code === 'unavailable' ? 5 : undefined)
  return seconds === undefined ? {} : { 'Retry-After': String(seconds) }
}

/**
 * What went wrong, fit for the person at the screen: what the disk or the database cannot do is said in words, an
 * unexpected error is logged and says nothing of its inside.
 */
export function refusalOf(error: unknown): Refusal {
  if (error instanceof RefusedError) {
    noteRefusal(error.refusal.code, currentActor)
    return error.refusal
  }
  const fault = faultOf(error)
  if (fault !== null) {
    if (isMachineFault(fault)) seeFault(fault, new Date())
    return faultRefusal(fault)
  }
  const help = newRequestId()
  log.error({ event: 'failed', help, err: errorForLog(error) }, 'unexpected')
  return {
    code: 'failed',
    message: `Something went wrong. Nothing was changed. Try again. If you call for help, give this reference number: ${help}.`,
  }
}

export function errorResponse(error: unknown): Response {
  const refusal = refusalOf(error)
  const headers = { 'Cache-Control': 'no-store', ...headersOf(refusal) }
  return Response.json({ refusal }, { status: statusOf(refusal), headers })
}
