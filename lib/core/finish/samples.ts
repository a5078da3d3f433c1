/** How long something took: so many days each time. `own`: the shop's own record; otherwise drawn up from a setting. */
export type Samples = { readonly days: readonly number[]; readonly own: boolean }

/** So many of its own a shop needs before they speak. */
export const leastOwn = 8
/** And so many of the newest count. */
export const mostOwn = 40

/**
 * How a wait spreads about its usual length where nobody has measured it: the middle is the usual, one in ten takes
 * double [common practice, not measured].
 */
const customarySpread = [0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.15, 1.3, 1.6, 2] as const

const isSound = (days: number): boolean => Number.isFinite(days)

/**
 * What to draw a duration from: the newest forty of the shop's own, or a customary spread about a setting while there are
 * fewer than eight.
 *
 * @param own days each time, the newest first, 0 or more
 * @param settingDays usual length, in days
 *
 * Example: three of its own and a setting of 2 → 1.0, 1.2, … 2.0 … 4.0, not its own. Common practice for the spread.
 */
export function samplesOf(own: readonly number[], settingDays: number): Samples {
  const counted = own.filter(isSound).slice(0, mostOwn)
  if (counted.length >= leastOwn) return { days: sorted(counted.map((days) => Math.max(0, days))), own: true }
  const usual = isSound(settingDays) ? Math.max(0, settingDays) : 0
  return { days: customarySpread.map((share) => share * usual), own: false }
}

/** The shortest first. */
export const sorted = (days: readonly number[]): readonly number[] => days.toSorted((a, b) => a - b)

/**
 * One of the samples, by a number between 0 and 1. What has lasted for a while already is drawn from those that lasted
 * longer; where none did, it is as if it began now.
 *
 * @param days sorted, 0 or more
 * @param u 0 ≤ u < 1
 * @param elapsedDays how long it has lasted
 * @returns days still to come
 *
 * Example: 2, 5, 9 days and 4 elapsed → 1 or 5 days to come. Derived: the empirical distribution, given that it exceeds
 * the time elapsed.
 */
export function daysToCome(days: readonly number[], u: number, elapsedDays: number): number {
  // Nearly every draw: it begins now.
  if (elapsedDays <= 0) return Math.max(0, days[Math.min(days.length - 1, Math.floor(u * days.length))] ?? 0)
  const from = days.findIndex((one) => one > elapsedDays)
  const first = Math.max(0, from)
  const place = first + Math.min(days.length - first - 1, Math.floor(u * (days.length - first)))
  return Math.max(0, (days[place] ?? 0) - (from < 0 ? 0 : elapsedDays))
}
