import { RateLimiterMemory, type RateLimiterRes } from 'rate-limiter-flexible'
import { RefusedError } from '@/lib/core/errors'

/** Ten wrong passwords for one name in a quarter of an hour; kept in memory: one process serves one shop. */
const byName = new RateLimiterMemory({ points: 10, duration: 15 * 60 })
/** Customer links and papers: a ceiling on guessing and on load, for the whole server: no header is believed. */
const byUse = new RateLimiterMemory({ points: 300, duration: 60 })
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
