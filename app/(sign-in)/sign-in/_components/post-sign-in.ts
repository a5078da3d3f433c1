import { getCsrfToken } from 'next-auth/react'
import { signInReasons, type SignInReason } from '@/lib/web/sign-in-answer'

export type Posted = { readonly kind: 'in' } | { readonly kind: SignInReason | 'offline'; readonly waitS: number }

/** Sends a sign-in and says in one word what came of it. Without an answer the page and what was typed on it stay. */
export async function postSignIn(provider: 'credentials' | 'pin', fields: Record<string, string>): Promise<Posted> {
  const answer = await post(provider, fields).catch(() => null)
  if (!answer) return { kind: 'offline', waitS: 0 }
  const why = await reasonOf(answer)
  if (why === null) return answer.ok ? { kind: 'in' } : { kind: 'failed', waitS: 0 }
  return { kind: why, waitS: Number(answer.headers.get('Retry-After') ?? 0) }
}

async function post(provider: string, fields: Record<string, string>): Promise<Response | null> {
  const csrfToken = await getCsrfToken()
  if (!csrfToken) return null
  const body = new URLSearchParams({ ...fields, csrfToken, json: 'true', callbackUrl: window.location.origin })
  return fetch(`/api/auth/callback/${provider}`, { method: 'POST', body })
}

/** The word in the address that the answer names; null: there is none. */
async function reasonOf(answer: Response): Promise<SignInReason | null> {
  const said = (await answer.json().catch(() => ({}))) as { readonly url?: unknown }
  const url = typeof said.url === 'string' ? new URL(said.url, window.location.origin) : null
  const word = url?.searchParams.get('error') ?? null
  if (word === null) return null
  return signInReasons.find((one) => one === word) ?? 'failed'
}
