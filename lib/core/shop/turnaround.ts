export type Turnaround = {
  readonly count: number
  readonly medianDays: number
  /** Nine of ten came back within this many days. */
  readonly nineOfTenDays: number
}

/**
 * How long a vendor takes: median, and the days within which nine of ten came back (nearest rank).
 *
 * @param days whole days from sending to arrival, any order
 * @returns null when nothing has come back yet
 *
 * Median of an even count is the mean of the middle two. Nearest rank: the ceil(0.9·n)-th smallest.
 * Example: 3, 5, 9 → median 5, nine of ten within 9.
 */
export function turnaround(days: readonly number[]): Turnaround | null {
  const sorted = days.toSorted((a, b) => a - b)
  const count = sorted.length
  const at = (rank: number): number => sorted[rank - 1] ?? 0
  if (count === 0) return null
  const medianDays = (at(Math.floor((count + 1) / 2)) + at(Math.ceil((count + 1) / 2))) / 2
  return { count, medianDays, nineOfTenDays: at(Math.ceil(0.9 * count)) }
}
