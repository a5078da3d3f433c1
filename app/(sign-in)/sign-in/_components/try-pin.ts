import { getCsrfToken, signIn } from 'next-auth/react'
import { whyPinRefused } from '../actions'

export type PinProblem = { readonly message: string; readonly waitMs: number }

const offline: PinProblem = { message: 'No connection to the shop’s server. Try again in a moment.', waitMs: 0 }

const noTablet: PinProblem = {
  message: 'This device is not an enrolled tablet any more. Sign in with a password, or ask the owner.',
  waitMs: 0,
}

/** Null: signed in. */
export async function tryPin(personId: string, pin: string): Promise<PinProblem | null> {
  // Asked first: without an answer here, `signIn` would leave the page.
  if (!(await getCsrfToken())) return offline
  const answer = await signIn('pin', { personId, pin, redirect: false }).catch(() => null)
  if (!answer) return offline
  if (answer.ok && !answer.error) return null
  const why = await whyPinRefused(personId).catch(() => null)
  if (!why) return offline
  if (why.kind === 'no-tablet') return noTablet
  return { message: why.waitMs > 0 ? 'Too many wrong PINs.' : 'Wrong PIN.', waitMs: why.waitMs }
}
