import { uncertaintyOfMeanCc, type ChamberMean } from '../chamber/burette'
import { toleranceInU } from '../rate/next-pass'
import type { AdviceAtMill, MillInput } from './advice'
import { asLastRead } from './as-last-read'
import { furtherReadings, mostReadings, type Further, type ReadAcross } from './further-readings'
import type { StateAtMill } from './state-at-mill'
import { touchOffDepth } from './touch-off'

/** How the chambers of a head will be read that nobody has read yet. */
export type BenchReads = {
  /** How many chambers are read, 1–24. */
  readonly chambers: number
  /** Standard deviation of one reading, and the burette's division, in cc. */
  readonly readingCc: number
  readonly divisionCc: number
  readonly toleranceCc: number
}

/**
 * How often each chamber must be read before a cut, so that their mean is known well enough for the tolerance.
 *
 * @returns 1–40; null: the division of the burette is too coarse, or the figures are impossible
 *
 * Smallest n with √((s²/n + r²/12)/N) ≤ t/2.5, so n ≥ s²/(N·(t/2.5)² − r²/12).
 * Derived: `uncertaintyOfMeanCc` over N independent chambers, solved for n. Example: one chamber, 0.3 cc a reading, division
 * 0.2, tolerance 0.5 → 0.09/(0.04 − 0.00333) = 2.45, so 3.
 */
export function readsAtBench({ chambers, readingCc, divisionCc, toleranceCc }: BenchReads): number | null {
  const roomCc2 = chambers * (toleranceCc / toleranceInU) ** 2 - divisionCc ** 2 / 12
  const count = Math.max(1, Math.ceil(readingCc ** 2 / roomCc2 - 1e-9))
  return roomCc2 > 0 && count <= mostReadings ? count : null
}

/**
 * How often which chamber is to be read at the mill next, all readings together.
 *
 * @param input what the advice was worked out from
 * @returns a line for each chamber; empty when none is to be read
 *
 * Before a cut, and at a stop, as the advice says. After a pass that is still to come: one reading of the chamber that is
 * read at the stop, and what a tolerance asks for on top; how well a volume is known does not depend on what is read.
 * Derived: `furtherReadings` on the head as it will stand. Example: one chamber, 0.3 cc a reading, ± 0.5 cc asked: the
 * depth and a rate of 1 % leave 0.18, so one reading at the stop is enough.
 */
export function readsAtMill(input: MillInput, { advice, state }: AdviceAtMill): readonly Further[] {
  if (!state) return []
  switch (advice.code) {
    case 'read-more':
      return advice.further
    case 'read-now':
      return atStop(input, state, advice.chamber, 0)
    case 'cut':
      return input.unread && advice.bound === 'nominal' ? [] : atStop(input, state, advice.thenRead, advice.moreThou)
    default:
      return []
  }
}

function atStop(input: MillInput, state: StateAtMill, chamber: string, moreThou: number): readonly Further[] {
  const { burette, readings } = input.cuts
  const offSince = (touchOffDepth(readings).totalIn - touchOffDepth(asLastRead(readings)).totalIn) * 1000
  const head = {
    ...state.read,
    depthThou: state.read.depthThou + offSince + moreThou,
    chambers: state.read.chambers.map((one) => readOnce(one, one.chamber === chamber, burette.divisionCc)),
  }
  const further = furtherReadings(head, burette.divisionCc, ({ mean }) => mean.uCc, input.toleranceCc / toleranceInU)
  const own = further?.find((one) => one.chamber === chamber)?.readings ?? 0
  return [{ chamber, readings: 1 + own }, ...(further ?? []).filter((one) => one.chamber !== chamber)]
}

/** What was read before the pass says nothing of the head after it. */
function readOnce({ chamber, before }: ReadAcross, isRead: boolean, divisionCc: number): ReadAcross {
  const uCc = uncertaintyOfMeanCc(before.readingCc, 1, divisionCc)
  const since: ChamberMean = { ...before, count: 1, rangeCc: 0, uCc }
  return { chamber, before, since: isRead ? since : null }
}
