import type { Rate } from '../rate/rate'
import { asLastRead } from './as-last-read'
import { stateAtMill, type MillFacts } from './state-at-mill'

/**
 * The rate that a head has shown by its own cut, in cc per thou; null while no chamber was read after one.
 *
 * @param facts the head as read and cut so far, and the rate believed before; depths 0–500 thou, cc 1–400
 *
 * A depth that came after the last reading changes nothing: what was cut up to that reading taught. Example: 64.0 ± 0.3
 * loses 1.2 ± 0.424 over 10 thou, believed 0.16 ± 0.01 → 0.1579. Derived: `headEstimate` at the last reading.
 */
export function ownRate(facts: MillFacts): Rate | null {
  const state = stateAtMill({ ...facts, cuts: { ...facts.cuts, readings: asLastRead(facts.cuts.readings) } })
  return state?.from === 'read-since-cut' ? state.rate : null
}
