import { mean } from '../mean'
import type { StepId, StepKey } from '../route/step-ids'
import { formatBare } from '../units/format-figure'
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
  /** again | far: it was answered to be a repeat, near the others or far off them; null: nobody asked. */
  readonly repeat: string | null
  readonly confirmed: boolean
  /** It came with "All alike": nobody measured it at this point. */
  readonly filled: boolean
  readonly heldAgainst: string | null
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
  /** Unlikely, and typed a second time to keep it; what it was held against, as it is kept. */
  readonly confirmed: boolean
  readonly heldAgainst: string | null
  /** It came with "All alike"; a correction of it measures nothing either. */
  readonly filled: boolean
  /** The correction that stands, with its reason; '' when it is the first answer. */
  readonly correctionReason: string
  /** As answered when it was read: 'again', or 'far' when it lay far off the others and was kept all the same. */
  readonly repeat: string | null
  /** Of how many repeats it is the mean; left out: a reading as typed. */
  readonly repeats?: number
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
      confirmed: standing.point.confirmed,
      filled: standing.point.filled,
      heldAgainst: standing.point.heldAgainst,
      correctionReason: standing.point.reason,
      // A figure that was replaced is not far off any more.
      repeat: original.point.repeat === 'far' && standing !== original ? 'again' : original.point.repeat,
    }))
    .sort((a, b) => a.seq - b.seq)
}

const stepOf = ({ stepId, occurrence, orderId }: KeptSet): StepKey => ({
  stepId: stepId as StepId,
  occurrence,
  orderId,
})

/**
 * The newest answer at each step, kind and point, in the order in which each was first given there. A chamber that was read
 * more than once under one condition holds the mean of its repeats, with the place in time of the last.
 *
 * @param repeats sets of readings that are repeats of each other, as `standingRepeats` or `markedRepeats` give them
 *
 * Example: chamber 1 read 62.1 and 62.3 → one reading of 62.2.
 */
export function newestReadings(
  readings: readonly EffectiveReading[],
  repeats: readonly (readonly EffectiveReading[])[],
): EffectiveReading[] {
  const byPlace = new Map<string, EffectiveReading>()
  const placeOf = ({ step: { stepId, occurrence, orderId }, kind, point }: EffectiveReading): string =>
    [stepId, occurrence, orderId ?? '', kind, point].join('|')
  for (const reading of readings) byPlace.set(placeOf(reading), reading)
  for (const set of repeats) {
    const last = set.at(-1)
    if (set.length > 1 && last && byPlace.get(placeOf(last)) === last) byPlace.set(placeOf(last), meanOf(last, set))
  }
  return [...byPlace.values()]
}

function meanOf(last: EffectiveReading, set: readonly EffectiveReading[]): EffectiveReading {
  const value = mean(set.flatMap((reading) => reading.value ?? []))
  return { ...last, value, text: formatBare(value, 'chamberVolume'), unit: 'cc', repeats: set.length }
}
