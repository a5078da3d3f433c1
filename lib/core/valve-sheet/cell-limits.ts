import type { ExpectedFacts } from '../expected/types'
import { portOf } from '../readings/valves'
import type { ValveKind } from '../readings/valve-kinds'
import { wantedOfReading } from '../wanted/of-reading'
import { columnOf } from './columns'

/** As much of what is known of a head as limits its valves. */
export type LimitFacts = Pick<ExpectedFacts, 'limits' | 'liftIn' | 'wanted'>

/** In the unit of the kind; null: no limit on that side. */
export type CellLimits = { readonly lowest: number | null; readonly highest: number | null }

/**
 * The limits of one cell of the valve sheet, in the unit of its kind. Outside them a figure is marked and may be kept.
 *
 * @param facts limits, lifts and wanted figures of the head
 * @returns null when nothing limits it
 *
 * Runout at most, vacuum at least, retainer to seal at least lift and margin, the others what is wanted and its tolerance.
 * Common practice; the maker's figures come first. Example: seat width wanted 0.060, tolerance 0.010 → 0.050 to 0.070.
 */
export function cellLimits(kind: ValveKind, point: string, facts: LimitFacts): CellLimits | null {
  const { limits, liftIn, wanted } = facts
  const span = wantedOfReading(kind, point, wanted, limits)
  switch (columnOf(kind).heldBy) {
    case 'most':
      return { lowest: null, highest: span?.high ?? limits.runoutLimitIn }
    case 'least':
      return { lowest: limits.vacuumLeastInHg, highest: null }
    case 'lift': {
      const lift = liftIn[portOf(point)]
      return lift === null ? null : { lowest: lift + limits.retainerMarginIn, highest: null }
    }
    case 'wanted':
      return span && { lowest: span.low, highest: span.high }
    case 'nothing':
      return null
  }
}
