import { RefusedError, type Refusal, type RefusalCode } from '@/lib/core/errors'
import { log } from './log'

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
  'not-allowed': 403,
  'not-found': 404,
  'not-on-route': 404,
  conflict: 409,
  'operation-reused': 422,
  owed: 409,
  incomplete: 409,
  'wrong-state': 409,
  'too-many': 429,
  failed: 500,
}

export const statusOf = (refusal: Refusal): number => status[refusal.code]

/** What went wrong, fit for the person at the screen: an unexpected error is logged and says nothing of its inside. */
export function refusalOf(error: unknown): Refusal {
  if (error instanceof RefusedError) return error.refusal
  log.error(
    {
      err: error instanceof Error ? { name: error.name, message: error.message, stack: error.stack } : String(error),
    },
    'unexpected',
  )
  return {
    code: 'failed',
    message: 'Something went wrong. Nothing was changed. Try again; if it happens again, tell the owner.',
  }
}

export function errorResponse(error: unknown): Response {
  const refusal = refusalOf(error)
  return Response.json({ refusal }, { status: statusOf(refusal), headers: { 'Cache-Control': 'no-store' } })
}
