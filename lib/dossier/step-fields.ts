import { pointLabel } from '@/lib/core/readings/points'
import { readingSpecs } from '@/lib/core/readings/specs'
import { placesOf } from '@/lib/core/readings/valves'
import type { ReadingKind, ReadingSpec } from '@/lib/core/readings/types'
import type { Owed, RouteStep } from '@/lib/core/route/types'
import type { EffectiveReading } from '@/lib/core/readings/effective'

/** What a field is held against while it is typed, in the core's unit. */
export type FieldTarget = { readonly text: string; readonly lowest: number; readonly highest: number }

/** One answer to give: what, where, what stands there now, what was read there before. */
export type StepField = {
  readonly kind: ReadingKind
  readonly spec: ReadingSpec
  readonly point: string
  readonly pointLabel: string
  /** The answer that counts now; null when it is still owed. */
  readonly answer: string | null
  readonly notTaken: string | null
  /** The reading that holds the answer, for whoever may correct it; left out: it is not corrected here. */
  readonly readingId?: string
  /** The answer that stands was filled with "All alike", or stood for all valves of its kind. */
  readonly filled: boolean
  /** The newest answer to the same question at another step. */
  readonly previous: string | null
  readonly target: FieldTarget | null
  /** Of a chamber that has a value: its readings; left out: it has none. */
  readonly repeats?: Repeats
}

export type Repeats = {
  readonly values: readonly { readonly id: string; readonly text: string }[]
  /** "62.1, 62.3: mean 62.2, spread 0.2, 2 readings" */
  readonly words: string
}

/** The answers that a step asks for, each with what stands there and what was read before. */
export function fieldsOf(
  step: RouteStep,
  owes: readonly Owed[],
  readings: readonly EffectiveReading[],
  targetOf: (kind: ReadingKind, point: string) => FieldTarget | null,
): StepField[] {
  const here = (reading: EffectiveReading): boolean =>
    reading.step.stepId === step.stepId &&
    reading.step.occurrence === step.occurrence &&
    reading.step.orderId === step.orderId
  return owes.flatMap((owed) =>
    owed.points.map((point) => {
      // A valve's own answer before one that stood for all of its kind.
      const same = placesOf(owed.kind, point)
        .toReversed()
        .flatMap((place) => readings.filter((one) => one.kind === place.kind && one.point === place.point))
      const answered = owed.missing.includes(point) ? undefined : same.findLast(here)
      const before = same.findLast((reading) => reading !== answered)
      return {
        kind: owed.kind,
        spec: readingSpecs[owed.kind],
        point,
        pointLabel: pointLabel(point),
        answer: answered ? answered.text : null,
        notTaken: answered?.notTaken ?? null,
        ...(answered?.point === point && owed.kind !== 'photo' ? { readingId: answered.id } : {}),
        filled: answered !== undefined && (answered.filled || answered.point !== point),
        previous: before ? (before.notTaken ?? before.text) : null,
        target: targetOf(owed.kind, point),
      }
    }),
  )
}
