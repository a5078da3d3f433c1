const minuteMs = 60 * 1000

/** Minutes from one try of a mail to the next: short for a server that is busy, long for one that is down. 22 h 21 min in all. */
export const pausesMin = [1, 5, 15, 60, 180, 360, 720] as const

/**
 * When a mail that was tried so many times is tried again; null: not by itself any more. Counted from the try, so that a
 * server that was off for a weekend finds the mail where it stood.
 *
 * Example: after the second try → 5 minutes later; after the eighth → null.
 */
export function nextTryAt(tries: number, now: Date): Date | null {
  const pause = pausesMin[tries - 1]
  return pause === undefined ? null : new Date(now.getTime() + pause * minuteMs)
}
