import { decode } from 'next-auth/jwt'
import { cookies, headers } from 'next/headers'
import { forbidden, redirect } from 'next/navigation'
import { cache } from 'react'
import { asksAgain } from '@/lib/core/access/asks-again'
import type { Actor } from '@/lib/core/access/roles'
import type { Action } from '@/lib/core/access/table'
import { can } from '@/lib/core/access/can'
import { RefusedError } from '@/lib/core/errors'
import { signedInBy, type SignedIn } from '@/lib/data/sessions'
import { env } from '@/lib/env'
import { sessionCookieName } from './session-cookie'
import { noteRefusal } from './note-refusal'
import { tabletToken } from './tablet-cookie'

export async function sessionIdOfRequest(): Promise<string | null> {
  const token = (await cookies()).get(sessionCookieName())?.value
  if (!token) return null
  try {
    const decoded = await decode({ token, secret: env().NEXTAUTH_SECRET })
    return typeof decoded?.sid === 'string' ? decoded.sid : null
  } catch {
    return null // a token that does not decode is no token
  }
}

/** Who is asking, and by what, checked in the database; once a request. */
export const currentSession = cache(async (): Promise<SignedIn | null> => {
  const sessionId = await sessionIdOfRequest()
  return sessionId === null ? null : signedInBy(sessionId, await tabletToken(), new Date())
})

export const currentActor = async (): Promise<Actor | null> => (await currentSession())?.actor ?? null

/** For actions and route handlers: refused when nobody is signed in. */
export async function requireActor(): Promise<Actor> {
  const actor = await currentActor()
  if (!actor)
    throw new RefusedError({
      code: 'not-signed-in',
      message: 'You are signed out. Nothing typed is lost. Sign in and send it again.',
    })
  return actor
}

/** For a deed that asks for the password: refused when it was typed too long ago. See `lib/core/access/asks-again.ts`. */
export async function refuseUnlessAsked(deed: string): Promise<void> {
  if (!asksAgain.has(deed) || (await currentSession())?.askedLately) return
  throw new RefusedError({ code: 'ask-again', message: 'Type your password once more for this.' })
}

/** For pages and layouts: whoever is signed in, or to the sign-in page and back to this very address. */
export async function signedIn(): Promise<Actor> {
  const actor = await currentActor()
  if (actor) return actor
  // Set by proxy.ts: path and query, "/away?by=promise".
  const here = (await headers()).get('x-here') ?? '/'
  redirect(`/sign-in?next=${encodeURIComponent(here)}`)
}

/** For pages: signed in, and allowed; not allowed → 403 and the page that says so. */
export async function requirePerson(action: Action): Promise<Actor> {
  const actor = await signedIn()
  if (!can(actor, action)) {
    noteRefusal('not-allowed', async () => actor)
    forbidden()
  }
  return actor
}
