import type { CutFacts } from '../rate/shop-cut'

type Readings = CutFacts['readings']

/**
 * The readings of a head without the depths that came after the last cc: as it stood when a chamber was last read.
 *
 * By definition. Example: a cc after 12 thou, then a depth of 18 → the cc and the 12.
 */
export function asLastRead(readings: Readings): Readings {
  const lastCc = Math.max(
    0,
    ...readings.filter(({ kind, value }) => kind === 'cc' && value !== null).map(({ seq }) => seq),
  )
  return readings.filter(({ kind, seq }) => (kind !== 'cut-depth' && kind !== 'touch-off') || seq <= lastCc)
}
