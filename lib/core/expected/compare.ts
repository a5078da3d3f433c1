import { mean } from '../mean'
import type { Comparison, Expected, HeldAgainst } from './types'

/**
 * A comparison with equal room on both sides, in the unit of the value.
 *
 * Derived: value − room to value + room. Example: 63.9 with room 1.5 → 62.4 to 65.4.
 */
export const within = (value: number, room: number, why: HeldAgainst): Comparison => ({
  value,
  low: value - room,
  high: value + room,
  why,
})

/**
 * Comparisons of one row together: the highest low and the lowest high hold, and each says what sets it.
 *
 * @returns null when there is no comparison; the value is that of the first that has one
 *
 * Derived: what lies inside all of the spans. Example: 59 to 61 and 60 to 65 → 60 to 61.
 */
export function together(comparisons: readonly (Comparison | null)[]): Expected | null {
  const all = comparisons.filter((one) => one !== null && sound(one)) as readonly Comparison[]
  const [first] = all
  if (!first) return null
  const lows = all.filter((one) => one.low !== null)
  const highs = all.filter((one) => one.high !== null)
  const low = lows.reduce((most, one) => (Number(one.low) > Number(most.low) ? one : most), lows[0] ?? first)
  const high = highs.reduce((least, one) => (Number(one.high) < Number(least.high) ? one : least), highs[0] ?? first)
  const withValue = all.find(({ value }) => value !== null) ?? first
  const { value, why } = withValue
  return { value, why, low: low.low, high: high.high, lowWhy: low.why, highWhy: high.why }
}

/** Figures at the end of what a double holds say nothing. */
const sound = ({ value, low, high }: Comparison): boolean =>
  [value, low, high].every((end) => end === null || Number.isFinite(end))

/** Typed decimals differ in their last place by nothing that was meant: a billionth is none. */
const hair = 1e-9

/**
 * Whether a figure lies under or over what is expected; null when it lies inside.
 *
 * Derived: comparison with both ends. Example: 6.39 of 62.4 to 65.4 → low.
 */
export function outside(value: number, { low, high }: Pick<Expected, 'low' | 'high'>): 'low' | 'high' | null {
  if (low !== null && value < low - hair) return 'low'
  return high !== null && value > high + hair ? 'high' : null
}

/**
 * The middle one of these figures, or the mean of the two in the middle; there must be one at least.
 *
 * By definition. Example: 63.8, 64.0, 6.39 → 63.8.
 */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const half = (sorted.length - 1) / 2
  return mean([sorted[Math.floor(half)] ?? NaN, sorted[Math.ceil(half)] ?? NaN])
}

/**
 * The median of readings of one kind, when it may stand for them: two or more, and more than half of them within the
 * room about it.
 *
 * @returns null when they are too few or disagree: then none of them may speak for the others
 *
 * Derived: as `median`. Example: 63.9, 64.1 with room 1.5 → 64.0; 63.9 and 6.39 → null.
 */
export function agreed(values: readonly number[], roomAbout: (middle: number) => number): number | null {
  if (values.length < 2) return null
  const middle = median(values)
  const room = roomAbout(middle)
  const near = values.filter((value) => Math.abs(value - middle) <= room + hair)
  return near.length * 2 > values.length ? middle : null
}
