import type { StepId, StepKey } from '../route/step-ids'
import type { ReadingFact, ReadingKind } from './types'

/** One measured point as it is kept: a correction is a point that names the one it stands in the place of. */
export type KeptPoint = {
  readonly id: string
  readonly kind: string
  readonly point: string
  readonly value: number | null
  readonly text: string
  readonly unit: string
  readonly notTaken: string | null
  readonly correctsId: string | null
  readonly correction: string | null
  readonly reason: string
}

/** What was read at one go, with its points. */
export type KeptSet = {
  readonly id: string
  readonly stepId: string
  readonly occurrence: string
  readonly orderId: string | null
  readonly eventSeq: number
  readonly instrumentId: string | null
  readonly instrumentCheckedOn: string | null
  readonly conditions: string
  readonly takenAt: Date
  readonly byId: string
  readonly points: readonly KeptPoint[]
}

export type EffectiveReading = ReadingFact & {
  readonly step: StepKey
  readonly setId: string
  readonly unit: string
  readonly takenAt: Date
  readonly byId: string
  readonly instrumentId: string | null
  readonly instrumentCheckedOn: string | null
  readonly conditions: string
  /** The correction that stands, with its reason; '' when it is the first answer. */
  readonly correctionReason: string
}

/**
 * The answers that count: corrections applied, withdrawn ones left out, oldest first. A correction keeps the place in time
 * of what it corrects.
 *
 * Example: 64.2 cc read at event 7, corrected at event 31 to 62.4 → one reading of 62.4 with seq 7.
 */
export function effectiveReadings(sets: readonly KeptSet[]): EffectiveReading[] {
  const points = sets.flatMap((set) => set.points.map((point) => ({ set, point })))
  const corrections = new Map(
    points.flatMap((entry) => (entry.point.correctsId ? [[entry.point.correctsId, entry] as const] : [])),
  )
  const newest = (entry: (typeof points)[number]): (typeof points)[number] => {
    const next = corrections.get(entry.point.id)
    return next ? newest(next) : entry
  }
  return points
    .filter(({ point }) => point.correctsId === null)
    .map((original) => ({ original, standing: newest(original) }))
    .filter(({ standing }) => standing.point.correction !== 'withdraw')
    .map(({ original, standing }) => ({
      id: standing.point.id,
      seq: original.set.eventSeq,
      kind: standing.point.kind as ReadingKind,
      point: standing.point.point,
      value: standing.point.value,
      text: standing.point.text,
      unit: standing.point.unit,
      notTaken: standing.point.notTaken,
      step: stepOf(original.set),
      setId: original.set.id,
      takenAt: original.set.takenAt,
      byId: standing.set.byId,
      instrumentId: original.set.instrumentId,
      instrumentCheckedOn: original.set.instrumentCheckedOn,
      conditions: original.set.conditions,
      correctionReason: standing.point.reason,
    }))
    .sort((a, b) => a.seq - b.seq)
}

const stepOf = ({ stepId, occurrence, orderId }: KeptSet): StepKey => ({
  stepId: stepId as StepId,
  occurrence,
  orderId,
})

/** The newest answer at each step, kind and point, in the order in which each was first given there. */
export function newestReadings(readings: readonly EffectiveReading[]): EffectiveReading[] {
  const byPlace = new Map<string, EffectiveReading>()
  for (const reading of readings) {
    const { stepId, occurrence, orderId } = reading.step
    byPlace.set([stepId, occurrence, orderId ?? '', reading.kind, reading.point].join('|'), reading)
  }
  return [...byPlace.values()]
}
