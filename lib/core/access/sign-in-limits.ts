/**
 * What wrong tries at a sign-in are counted by.
 *
 * `here`: a name from one address, `address`: that address over all names, `name`: a name from all addresses; these three
 * count for browsers that the person never signed in with. `device`: a person's own browser, which strangers' tries do not
 * keep waiting. `factor`: a person's codes, asked for after the right password. `own`: a person's password, asked of them
 * again while they are signed in.
 */
export const tryKinds = ['here', 'address', 'name', 'device', 'factor', 'own'] as const
export type TryKind = (typeof tryKinds)[number]

const minuteMs = 60_000
const firstPauseMs = 15_000

/** How many wrong ones in a row cost nothing, and the longest pause after more of them. */
const limits: Readonly<Record<TryKind, { readonly free: number; readonly longestMs: number }>> = {
  here: { free: 5, longestMs: 15 * minuteMs },
  address: { free: 30, longestMs: 15 * minuteMs },
  name: { free: 30, longestMs: 15 * minuteMs },
  device: { free: 10, longestMs: 15 * minuteMs },
  factor: { free: 5, longestMs: 60 * minuteMs },
  own: { free: 10, longestMs: 15 * minuteMs },
}

/** After so long without a try a count begins again. */
export const triesForgottenMs = 24 * 60 * minuteMs

/**
 * How long the next try waits after so many wrong ones in a row.
 *
 * Unit: ms. Range: `wrong` 0 and more; what is no such number counts as the longest pause.
 * Formula: 0 below the free ones; then 15 s · 2^(wrong − free), the longest at the most. By definition.
 * Example: `signInPauseMs('here', 4)` → 0; `signInPauseMs('here', 5)` → 15,000; `signInPauseMs('here', 40)` → 900,000.
 */
export function signInPauseMs(kind: TryKind, wrong: number): number {
  const { free, longestMs } = limits[kind]
  if (!(wrong >= 0)) return longestMs
  if (wrong < free) return 0
  return Math.min(firstPauseMs * 2 ** (wrong - free), longestMs)
}

/** Wrong tries since the last right one. */
export type SignInTries = { readonly wrong: number; readonly lastAt: Date }

/** Whether tries are so old that they count no more. */
export const areTriesForgotten = ({ lastAt }: SignInTries, now: Date): boolean =>
  now.getTime() - lastAt.getTime() > triesForgottenMs

/**
 * How long the next try still waits.
 *
 * Unit: ms, 0: may try. A clock that was set back makes nobody wait longer than the whole pause.
 * Formula: min(lastAt + pause(wrong) − now, pause(wrong)), not under 0. By definition.
 * Example: five wrong `here`, the last 5 s ago → 10,000.
 */
export function signInWaitMs(kind: TryKind, tries: SignInTries | null, now: Date): number {
  if (tries === null || areTriesForgotten(tries, now)) return 0
  const pauseMs = signInPauseMs(kind, tries.wrong)
  const leftMs = tries.lastAt.getTime() + pauseMs - now.getTime()
  return Math.max(0, Math.min(leftMs, pauseMs))
}
