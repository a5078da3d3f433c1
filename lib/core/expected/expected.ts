import type { ReadingKind } from '../readings/types'
import { expectedChamber } from './chamber'
import { expectedCorner } from './corner'
import { expectedProtrusion, expectedRecession } from './flat-deck'
import { expectedFlow } from './flow'
import { expectedEdgeDepth, expectedMillDepth } from './mill-depth'
import { expectedRunout, expectedStraightness, expectedVacuum } from './one-sided'
import { expectedRemovedBefore } from './removed-before'
import { expectedSeatDepth } from './seat-depth'
import type { Expected, ExpectedFacts } from './types'
import { expectedWanted } from './wanted'

type Row = (point: string, facts: ExpectedFacts) => Expected | null

const rows: Partial<Record<ReadingKind, Row>> = {
  cc: expectedChamber,
  thickness: expectedCorner,
  'seat-depth': expectedSeatDepth,
  recession: expectedRecession,
  protrusion: expectedProtrusion,
  'cut-depth': (_, facts) => expectedMillDepth(facts),
  'edge-depth': expectedEdgeDepth,
  straightness: expectedStraightness,
  'removed-before': (_, facts) => expectedRemovedBefore(facts),
  flow: expectedFlow,
  runout: (_, facts) => expectedRunout(facts),
  vacuum: (_, facts) => expectedVacuum(facts),
}

/**
 * What a reading is expected to be, in the core's unit of its kind, by what is known of this head.
 *
 * @param kind, point of the reading; @param facts figures within the limits of entry
 * @returns value, low, high and what it was held against; null when there is nothing to hold it against
 *
 * Outside low–high a reading is unlikely: it is kept only when it is typed a second time.
 * Example: chamber 2 of a head whose others read 63.9, 64.0, 63.8 → 63.9, 62.4 to 65.4.
 * Derived: as the row of its kind.
 */
export function expected(kind: ReadingKind, point: string, facts: ExpectedFacts): Expected | null {
  const row = rows[kind]
  if (row) return row(point, facts)
  return expectedWanted(kind, point, facts)
}
