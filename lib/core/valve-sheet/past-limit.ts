import type { ValveKind } from '../readings/valve-kinds'
import { cellLimits, type LimitFacts } from './cell-limits'

export type PastLimit = {
  readonly side: 'under' | 'over'
  /** In the unit of the kind. */
  readonly value: number
  readonly limit: number
}

/** Decimals are not exact in binary: 0.0700 is still within 0.060 ± 0.010. */
const rounding = 1e-9

/**
 * How a figure of the valve sheet lies past the limits of its cell, in the unit of its kind.
 *
 * @param facts limits, lifts and wanted figures of the head
 * @returns null: inside them, or nothing limits it
 *
 * Derived: as `cellLimits`. Example: seat width 0.075 where 0.060 ± 0.010 is wanted → over 0.070.
 */
export function pastCellLimit(kind: ValveKind, point: string, value: number, facts: LimitFacts): PastLimit | null {
  const limits = cellLimits(kind, point, facts)
  if (!limits) return null
  const { lowest, highest } = limits
  if (lowest !== null && value < lowest - rounding) return { side: 'under', value, limit: lowest }
  if (highest !== null && value > highest + rounding) return { side: 'over', value, limit: highest }
  return null
}
