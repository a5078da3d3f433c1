import { cornersFit, type Corners, type Deck } from '../straightness/corners-fit'
import type { ReadingFact } from '../readings/types'
import type { MeasuredParts } from './types'
import type { StepKey } from './step-ids'

type Reading = ReadingFact & { readonly step: StepKey }

/**
 * What an outside order's cut took, by the four corners read on its return; null: not read, or something was cut here
 * between the two rounds, which the corners cannot tell apart.
 *
 * The round before is the newest one that is older: an earlier order's arrival, else the thickness as it came.
 */
export function measuredOutside(
  orderId: string,
  readings: readonly Reading[],
  deck: Deck,
  toleranceIn: number,
): MeasuredParts | null {
  const corners = readings.filter(({ kind, step }) => kind === 'thickness' && isRound(step))
  const after = corners.filter(({ step }) => step.orderId === orderId)
  const firstSeq = Math.min(...after.map(({ seq }) => seq))
  const older = corners.filter(({ seq, step }) => seq < firstSeq && step.orderId !== orderId)
  const last = older.reduce<Reading | null>((best, one) => (best && best.seq > one.seq ? best : one), null)
  if (after.length === 0 || !last) return null
  const before = older.filter(({ step }) => step.orderId === last.step.orderId && step.stepId === last.step.stepId)
  if (readings.some((reading) => cutHere(reading) && reading.seq > last.seq && reading.seq < firstSeq)) return null
  const fit = cornersFit(deck, byCorner(before), byCorner(after))
  return fit.ok ? { flatIn: fit.value.flatIn, angleIn: fit.value.angleIn, toleranceIn } : null
}

const isRound = ({ stepId }: StepKey): boolean => stepId === 'thickness' || stepId === 'arrival-figures'
const cutHere = ({ kind }: Reading): boolean => kind === 'cut-depth' || kind === 'edge-depth'

const byCorner = (readings: readonly Reading[]): Corners =>
  Object.fromEntries(readings.map(({ point, value }) => [point, value]))
