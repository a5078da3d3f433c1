import type { ReadingKind } from '../readings/types'
import type { StepWait } from './codes'
import type { StepRef } from './keys'
import type { Owed, StepState } from './types'

/** What chips, grit and oil in a chamber, a port or on a seat falsify. */
const falsified: readonly ReadingKind[] = [
  'cc',
  'flow',
  'seat-depth',
  'runout',
  'sink',
  'recession',
  'protrusion',
  'deck-cc',
]

/** As much of a step as the rinse hangs on. */
export type RinsedStep = {
  readonly ref: StepRef
  readonly wait: StepWait
  readonly state: StepState
  readonly needed: boolean
  readonly owes: readonly Owed[]
  /** Steps that physics or the shop puts before it, not done yet. */
  readonly waits: () => readonly StepWait[]
  readonly isMachining: boolean
}

/**
 * Numbers of the events that count: the last machining, and the last rinse and final wash that were ticked or waived; 0:
 * none.
 */
export type RinseHistory = {
  readonly machinedSeq: number
  readonly rinsedSeq: number
  readonly washedOutSeq: number
}

export type RinseNow = {
  /** `gone`: there is nothing to rinse for, and it was never done. */
  readonly state: 'gone' | 'done' | 'do again' | 'open'
  /** What comes before it. */
  readonly after: readonly StepWait[]
  /** Steps that wait for it. */
  readonly before: ReadonlySet<StepRef>
}

const settled = ({ state }: RinsedStep): boolean => state === 'done' || state === 'waived' || state === 'not needed'

/** A step that measures what dirt falsifies, and makes none itself: a cutter's own reading on the way is no measuring. */
const measures = ({ owes, isMachining }: RinsedStep): boolean =>
  !isMachining && owes.some(({ kind, optional }) => optional !== true && falsified.includes(kind))

/**
 * Where the rinse (blow off, rinse, dry) stands now: after any machining, before cc, flow or seats are measured. No setting
 * loosens it: it is worked out from what was done, not from the tables.
 *
 * It is ready once a measuring step waits for nothing else. Before that it waits for what that step waits for, so that a
 * head is rinsed once before it is measured and not after each cut. A head with nothing left to measure needs none: the
 * final wash cleans it.
 */
export function rinseNow(
  steps: readonly RinsedStep[],
  { machinedSeq, rinsedSeq, washedOutSeq }: RinseHistory,
): RinseNow {
  const open = steps.filter((step) => step.needed && !settled(step))
  const toMeasure = open.filter(measures)
  const machiningLeft = open.filter((step) => step.isMachining)
  // A shop may have its last measuring wait for the final wash: that leaves the head as clean as a rinse does.
  const isDirty = machinedSeq > Math.max(rinsedSeq, washedOutSeq)
  const nothing = toMeasure.length === 0 || (!isDirty && machiningLeft.length === 0)
  if (nothing) return { state: rinsedSeq > 0 ? 'done' : 'gone', after: [], before: new Set() }
  if (!isDirty) {
    return { state: rinsedSeq > 0 ? 'done' : 'open', after: machiningLeft.map(({ wait }) => wait), before: new Set() }
  }
  const fewest = toMeasure
    .map((step) => step.waits())
    .reduce((least, waits) => (waits.length < least.length ? waits : least))
  return {
    state: rinsedSeq > 0 ? 'do again' : 'open',
    after: fewest,
    before: new Set(toMeasure.map(({ ref }) => ref)),
  }
}
