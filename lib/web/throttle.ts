import { RateLimiterMemory, type RateLimiterRes } from 'rate-limiter-flexible'
import { RefusedError } from '@/lib/core/errors'

/** Ten wrong passwords for one name in a quarter of an hour; kept in memory: one process serves one shop. */
const byName = new RateLimiterMemory({ points: 10, duration: 15 * 60 })
/** Customer links and papers: a ceiling on guessing and on load, for the whole server: no header is believed. */
const byUse = new RateLimiterMemory({ points: 300, duration: 60 })
/** Codes of tablets: a person types one or two in a minute. For the whole server: nobody is known yet. */
const byTabletCode = new RateLimiterMemory({ points: 10, duration: 60 })
/** Their own password, typed by somebody signed in: as many wrong ones as at the sign-in. */
const byOwnPassword = new RateLimiterMemory({ points: 10, duration: 15 * 60 })
/** Pictures of one person: more in a minute is no camera. */
const byUpload = new RateLimiterMemory({ points: 40, duration: 60 })

const key = (name: string): string => name.trim().toLowerCase()

export async function signInAllowed(name: string): Promise<boolean> {
  const state: RateLimiterRes | null = await byName.get(key(name))
  return (state?.remainingPoints ?? 1) > 0
}

export async function signInFailed(name: string): Promise<void> {
  try {
    await byName.consume(key(name))
  } catch {
    // Over the limit: `signInAllowed` says so from now on.
  }
}

export const signInSucceeded = async (name: string): Promise<void> => void (await byName.delete(key(name)))

/** False when there were too many in the last minute. */
export const withinRateLimit = (what: string): Promise<boolean> => within(byUse, what)

/** The same where a picture or a paper is answered: refused in words. */
export async function refuseTooMany(what: string): Promise<void> {
  if (await withinRateLimit(what)) return
  throw new RefusedError({ code: 'too-many', message: 'Too many at once. Wait a minute, then try again.' })
}

/** Before a tablet's code is looked at. */
export async function refuseTooManyCodes(): Promise<void> {
  if (await within(byTabletCode, 'code')) return
  throw new RefusedError({ code: 'too-many', message: 'Too many codes were tried. Wait a minute, then try again.' })
}

/** Counts a try of somebody's own password before it is looked at; the right one begins the count again. */
export async function withOwnPassword<T>(personId: string, work: () => Promise<T>): Promise<T> {
  if (!(await within(byOwnPassword, personId))) {
    throw new RefusedError({ code: 'too-many', message: 'Too many tries. Wait 15 minutes, then try again.' })
  }
  const done = await work()
  await byOwnPassword.delete(personId)
  return done
}

/** False when this person sent too many pictures in the last minute. */
export const uploadAllowed = (personId: string): Promise<boolean> => within(byUpload, personId)

async function within(limit: RateLimiterMemory, what: string): Promise<boolean> {
  try {
    await limit.consume(what)
    return true
  } catch {
    return false
  }
}
