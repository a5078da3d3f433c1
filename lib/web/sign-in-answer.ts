import { faultCodes, isMachineFault, type MachineFault } from '@/lib/core/faults'

/**
 * Why a sign-in was refused: one of these words and nothing else stands in the answer. `code`: the password is right, the
 * code of the second factor is asked for. `failed`: the server's own trouble, which says nothing of the password; where the
 * disk or the database is the trouble, its word of the closed list of faults.
 */
const ownReasons = ['wrong', 'code', 'wrong-code', 'wait', 'failed'] as const
export const signInReasons: readonly SignInReason[] = [...ownReasons, ...faultCodes.filter(isMachineFault)]
export type SignInReason = (typeof ownReasons)[number] | MachineFault
export type SignInAnswer = { readonly why: SignInReason; readonly retryAfterS?: number }

export class SignInRefused extends Error {
  constructor(readonly answer: SignInAnswer) {
    super(answer.why)
    this.name = 'SignInRefused'
  }
}

const statuses: Readonly<Partial<Record<SignInReason, number>>> = {
  wrong: 401,
  code: 401,
  'wrong-code': 401,
  wait: 429,
}
const ownTrouble = 503

/** The status and the header that say the same as the word; whoever posted a plain form is led back to the page. */
export function withReason(response: Response, { why, retryAfterS }: SignInAnswer): Response {
  if (response.headers.has('Location')) return response
  const headers = new Headers(response.headers)
  if (retryAfterS !== undefined) headers.set('Retry-After', String(retryAfterS))
  return new Response(response.body, { status: statuses[why] ?? ownTrouble, headers })
}

/** The server's own trouble outside the check of the password: no word of it leaves. */
export const failedAnswer = (why: SignInReason): Response =>
  Response.json({ url: `/sign-in?error=${why}` }, { status: ownTrouble, headers: { 'Cache-Control': 'no-store' } })
