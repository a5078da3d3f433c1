/**
 * Why a sign-in was refused: one of these words and nothing else stands in the answer. `code`: the password is right, the
 * code of the second factor is asked for. `failed`: the server's own trouble, which says nothing of the password.
 */
export const signInReasons = ['wrong', 'code', 'wrong-code', 'wait', 'failed'] as const
export type SignInReason = (typeof signInReasons)[number]
export type SignInAnswer = { readonly why: SignInReason; readonly retryAfterS?: number }

export class SignInRefused extends Error {
  constructor(readonly answer: SignInAnswer) {
    super(answer.why)
    this.name = 'SignInRefused'
  }
}

const statuses: Readonly<Record<SignInReason, number>> = {
  wrong: 401,
  code: 401,
  'wrong-code': 401,
  wait: 429,
  failed: 503,
}

/** The status and the header that say the same as the word; whoever posted a plain form is led back to the page. */
export function withReason(response: Response, { why, retryAfterS }: SignInAnswer): Response {
  if (response.headers.has('Location')) return response
  const headers = new Headers(response.headers)
  if (retryAfterS !== undefined) headers.set('Retry-After', String(retryAfterS))
  return new Response(response.body, { status: statuses[why], headers })
}

/** The server's own trouble outside the check of the password: no word of it leaves. */
export const failedAnswer = (): Response =>
  Response.json({ url: '/sign-in?error=failed' }, { status: 503, headers: { 'Cache-Control': 'no-store' } })
