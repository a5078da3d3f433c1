import type { Quantity } from '../units/quantities'

/**
 * One kind of thing that is read off a head. A kind says what the answer looks like and at which points of the head it
 * is taken; the station screen, the job sheet and the completeness check are all drawn from this one description.
 */
export type ReadingForm =
  | 'figure' // a number with a unit
  | 'choice' // one of a few answers
  | 'note' // words

/** Where on the head: one answer, one per chamber, the four corners, both edges of a cut, … */
export const pointSets = [
  'one',
  'chambers', // '1' … 'n', counted from the marked end
  'corners', // 'intake-1', 'exhaust-1', 'intake-2', 'exhaust-2'
  'edges', // 'intake', 'exhaust': depth at both edges of a cut
  'valves', // 'intake', 'exhaust': one of each
  'chamber-valves', // '1-intake', '1-exhaust', '2-intake', …
  'each-valve', // the same, with '1-intake-2' where a chamber has two of a kind
  'across-along', // straightness: 'across', 'along'
  'ends', // 'end-1', 'end-2'
  'face-ends', // 'deck-1', 'cover-1', …: a wedge off a face, at both of its ends
  'seat-open', // 'seat', 'open': spring pressure
  'flow', // 'intake@0.300': one per port and lift
] as const
export type PointSet = (typeof pointSets)[number]

/** Of one kind, but for its name. */
export type ReadingShape = {
  readonly label: string
  readonly form: ReadingForm
  readonly points: PointSet
  /** Only for figures. */
  readonly quantity?: Quantity
  /** Only for choices. `bad` marks an answer that means: stop, hold. */
  readonly choices?: readonly { readonly value: string; readonly label: string; readonly bad?: true }[]
  /** A short line under the field. */
  readonly hint?: string
  /** A bad or free answer may be given in words instead: "no photo: why", "customer told". */
  readonly mayBeWords?: true
}
