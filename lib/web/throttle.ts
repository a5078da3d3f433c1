import { RateLimiterMemory, RateLimiterRes } from 'rate-limiter-flexible'
import { RefusedError } from '@/lib/core/errors'
import { log } from './log'

/**
 * So many in a minute for whoever asks: a person, or where nobody is signed in the address that asks. Kept in memory: these
 * are ceilings on load and on guessing, and the tries of a sign-in, which must outlive a start, are in the database.
 */
const perMinute = {
  /** What is opened by a link alone: a person looks at a few pages. */
  page: 120,
  /** The pictures and papers of such a page, and the answers given on it. */
  link: 240,
  /** A page of labels is one; nobody reads two papers a second. */
  paper: 120,
  /** Codes of tablets and of the set-up: a person types one or two. */
  code: 10,
  /** More in a minute is no camera. */
  picture: 40,
} as const

export type Use = keyof typeof perMinute

const words: Readonly<Record<Use, string>> = {
  page: 'Too many at once. Wait a minute, then try again.',
  link: 'Too many at once. Wait a minute, then try again.',
  paper: 'Too many papers at once. Wait a minute, then try again.',
  code: 'Too many codes were tried. Wait a minute, then try again.',
  picture: 'Too many pictures at once. Wait a minute, then send it again.',
}

const limiters = new Map(
  Object.entries(perMinute).map(([use, points]) => [use, new RateLimiterMemory({ points, duration: 60 })]),
)

/** How long whoever asks waits, s; 0: this one is taken. It counts before it is looked at. */
export async function waitFor(use: Use, who: string): Promise<number> {
  try {
    await limiters.get(use)?.consume(who)
    return 0
  } catch (over) {
    if (!(over instanceof RateLimiterRes)) throw over
    // Logged once for each minute: what comes on top of too many must not fill a disk.
    if (over.consumedPoints === perMinute[use] + 1) log.warn({ event: 'too many', use, who }, 'limits')
    return Math.max(1, Math.ceil(over.msBeforeNext / 1000))
  }
}

/** The same as a refusal in words. */
export async function refuseTooMany(use: Use, who: string): Promise<void> {
  const retryAfterS = await waitFor(use, who)
  if (retryAfterS > 0) throw new RefusedError({ code: 'too-many', message: words[use], retryAfterS })
}
