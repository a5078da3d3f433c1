import { whyPinRefused } from '../actions'
import { postSignIn } from './post-sign-in'
import { isTrouble, troubleWords } from './sign-in-words'

export type PinProblem = { readonly message: string; readonly waitMs: number }

const offline: PinProblem = { message: 'No connection to the shop’s server. Try again in a moment.', waitMs: 0 }

const failed: PinProblem = {
  message: 'The server could not check your PIN. Try again; if it happens again, tell the owner.',
  waitMs: 0,
}

const noTablet: PinProblem = {
  message: 'This device is not an enrolled tablet any more. Sign in with a password, or ask the owner.',
  waitMs: 0,
}

/** Null: signed in. */
export async function tryPin(personId: string, pin: string): Promise<PinProblem | null> {
  const posted = await postSignIn('pin', { personId, pin })
  if (posted.kind === 'in') return null
  if (posted.kind === 'offline') return offline
  if (posted.kind === 'failed') return failed
  if (isTrouble(posted.kind)) return { message: troubleWords(posted.kind), waitMs: 0 }
  const why = await whyPinRefused(personId).catch(() => null)
  if (!why) return offline
  if (why.kind === 'no-tablet') return noTablet
  return { message: why.waitMs > 0 ? 'Too many wrong PINs.' : 'Wrong PIN.', waitMs: why.waitMs }
}
