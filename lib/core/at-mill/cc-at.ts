import { chamberMean, headCc, type BuretteFacts, type ChamberMean, type HeadCc } from '../chamber/burette'
import type { ChamberChange } from '../chamber/changes'
import { chamberOfPoint } from '../chamber/mill-point'
import { standingRepeats } from '../chamber/repeats'
import type { StepId } from '../route/step-ids'
import type { RouteFacts } from '../route/types'

type Reading = RouteFacts['readings'][number]

export type ChambersCc = {
  /** One a chamber that was measured, by its number. */
  readonly chambers: ReadonlyMap<string, ChamberMean>
  /** Null: none was measured. */
  readonly head: HeadCc | null
}

/** Steps whose cc say what the head held before the cut; the earlier in this list counts. */
const beforeSteps: readonly StepId[] = ['open-chamber', 'chambers']

/**
 * What the chambers held before the cut, in cc: as read after chamber work where there was any, else as they came.
 *
 * @param readings that stand, repeats too, oldest first; cc 1–400
 * @param burette its division and the spread of one reading, in cc
 * @param changes after which a reading is no repeat of one before it; what was read at the mill before the first of them is
 *   a repeat
 * @returns a mean for each chamber that was read at that step, and the head's; head null when none was read
 *
 * Example: 62.0, 62.4 on arrival, 62.8, 63.0 after the chambers were opened → 62.8 and 63.0, mean 62.9.
 * Derived: `ccOf` over the readings of that step alone.
 */
export function ccBeforeCut(
  readings: readonly Reading[],
  burette: BuretteFacts,
  changes: readonly ChamberChange[] = [],
): ChambersCc {
  const cc = readings.filter(({ kind }) => kind === 'cc')
  const stepId = beforeSteps.find((before) => cc.some(({ step }) => step.stepId === before))
  const standing = standingRepeats(
    cc.filter(({ step }) => step.stepId === stepId),
    changes,
  ).flat()
  return ccOf([...standing, ...repeatsAtMill(cc, standing, changes)], burette)
}

/** Read at the mill with the cutter not yet on the deck: repeats of what was read before. */
function repeatsAtMill(
  cc: readonly Reading[],
  standing: readonly Reading[],
  changes: readonly ChamberChange[],
): readonly Reading[] {
  const last = Math.max(...standing.map(({ seq }) => seq))
  return cc.filter(
    ({ step, seq }) =>
      step.stepId === 'flat-cut' && !changes.some((change) => change.seq > last && change.seq <= seq) && seq > last,
  )
}

/**
 * The chambers among these readings, in cc: all readings of one chamber are repeats of it.
 *
 * @param readings cc 1–400; one that was not taken is passed over
 * @param changes after which a reading is no repeat of one before it at its step
 * @returns `chamberMean` of each chamber that has a possible reading, and `headCc` of them; head null when none has
 *
 * Example: chamber 1 read 62.0 and 62.2, chamber 2 read 62.4 → means 62.1 and 62.4, head 62.25.
 * Derived: as `chamberMean` and `headCc`.
 */
export function ccOf(
  readings: readonly Reading[],
  burette: BuretteFacts,
  changes: readonly ChamberChange[] = [],
): ChambersCc {
  const byChamber = new Map<string, Reading[]>()
  for (const reading of standingRepeats(readings, changes).flat()) {
    const chamber = chamberOfPoint(reading.point)
    byChamber.set(chamber, [...(byChamber.get(chamber) ?? []), reading])
  }
  const chambers = new Map<string, ChamberMean>()
  for (const [chamber, repeats] of byChamber) {
    const mean = chamberMean(
      repeats.flatMap(({ value }) => value ?? []),
      burette,
      repeats.map(({ id }) => id),
    )
    if (mean.ok) chambers.set(chamber, mean.value)
  }
  const head = headCc([...chambers.values()])
  return { chambers, head: head.ok ? head.value : null }
}
