import type { RouteFacts } from '../route/types'

type Reading = RouteFacts['readings'][number]

export type TouchOffDepth = {
  /** All that the flat cut took here, over every touch-off. */
  readonly totalIn: number
  /** What the mill's scale says: from the touch-off that counts now. */
  readonly fromTouchOffIn: number
  /** The event of the last depth; null: none was read. */
  readonly seq: number | null
  /** How often the cutter was touched off anew. */
  readonly restarts: number
}

/** The answer that says the count begins anew. */
export const newTouchOff = 'new'

/**
 * Flat depth cut at the mill, in inches. A depth is always the total from the first touch-off; where the cutter was touched
 * off anew the count begins again, and what was cut before is added.
 *
 * @param readings of one visit, oldest first; depths 0–0.5 in
 * @returns zero depths when nothing was read
 *
 * Example: 0.0155, a new touch-off, then 0.0025 → 0.0180 in all, 0.0025 from the touch-off.
 * Derived: the sum of the last depth of each touch-off.
 */
export function touchOffDepth(readings: readonly Reading[]): TouchOffDepth {
  const here = readings.filter(({ step }) => step.stepId === 'flat-cut')
  const anew = here.filter(({ kind, text }) => kind === 'touch-off' && text === newTouchOff).map(({ seq }) => seq)
  const depths = here.filter(
    (reading): reading is Reading & { readonly value: number } =>
      reading.kind === 'cut-depth' && reading.value !== null,
  )
  const counts = [...anew, Infinity].map((to, at) => {
    const from = at === 0 ? 0 : (anew[at - 1] ?? 0)
    return depths.findLast(({ seq }) => seq >= from && seq < to)?.value ?? 0
  })
  return {
    totalIn: counts.reduce((sum, one) => sum + one, 0),
    fromTouchOffIn: counts.at(-1) ?? 0,
    seq: depths.at(-1)?.seq ?? null,
    restarts: anew.length,
  }
}
