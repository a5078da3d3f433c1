import type { ReadingKind } from './specs'

export { pointSets, type PointSet, type ReadingForm } from './shape'
export { readingKinds, type ReadingKind, type ReadingSpec } from './specs'

/** A reading as the route sees it: the newest answer at one point, corrections already applied. */
export type ReadingFact = {
  readonly id: string
  /** Sequence number of the event that recorded it: a later event undoes an earlier answer, never the clock. */
  readonly seq: number
  readonly kind: ReadingKind
  readonly point: string
  /** In the core's unit for a figure; null for words, choices and "not taken". */
  readonly value: number | null
  /** As typed. */
  readonly text: string
  /** Why it could not be taken; null when it was. */
  readonly notTaken: string | null
}
