/** So many wrong PINs cost nothing: a glove slips. */
const freeTries = 2
const firstPauseMs = 15_000
const longestPauseMs = 60 * 60 * 1000

/**
 * How long a person waits on a device before the next try, after so many wrong PINs in a row.
 *
 * Unit: ms. Range: `wrong` 0 and more; what is no such number counts as the longest pause.
 * Formula: 0 up to two; then 15 s · 2^(wrong − 3), an hour at the most. By definition.
 * Example: `pinPauseMs(3)` → 15,000; `pinPauseMs(5)` → 60,000; `pinPauseMs(20)` → 3,600,000.
 */
export function pinPauseMs(wrong: number): number {
  if (!(wrong >= 0)) return longestPauseMs
  if (wrong <= freeTries) return 0
  return Math.min(firstPauseMs * 2 ** (wrong - freeTries - 1), longestPauseMs)
}

/** Wrong PINs of one person on one device since the last right one. */
export type PinTries = { readonly wrong: number; readonly lastAt: Date }

/**
 * How long this person still waits on this device.
 *
 * Unit: ms, 0: may try. A clock that was set back makes nobody wait longer than the whole pause.
 * Formula: min(lastAt + pause(wrong) − now, pause(wrong)), not under 0. By definition.
 * Example: three wrong, the last 5 s ago → 10,000.
 */
export function pinWaitMs(tries: PinTries | null, now: Date): number {
  if (tries === null) return 0
  const pauseMs = pinPauseMs(tries.wrong)
  const leftMs = tries.lastAt.getTime() + pauseMs - now.getTime()
  return Math.max(0, Math.min(leftMs, pauseMs))
}
