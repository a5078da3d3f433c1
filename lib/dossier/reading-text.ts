import { readingSpecs } from '@/lib/core/readings/specs'
import type { ReadingKind } from '@/lib/core/readings/types'
import type { StepId } from '@/lib/core/route/step-ids'
import { lower } from '@/lib/core/route/words'
import { formatBare } from '@/lib/core/units/format-figure'
import { typedFigure } from '@/lib/core/units/typed-figure'
import type { EffectiveReading } from '@/lib/core/readings/effective'

type Readings = readonly EffectiveReading[]
export type Valued = EffectiveReading & { readonly value: number }

/** The answers of one kind given at one step. */
export const readAt = (readings: Readings, stepId: StepId, kind: ReadingKind): EffectiveReading[] =>
  readings.filter((reading) => reading.step.stepId === stepId && reading.kind === kind)

export const valuedAt = (readings: Readings, stepId: StepId, kind: ReadingKind): Valued[] =>
  readAt(readings, stepId, kind).filter((reading): reading is Valued => reading.value !== null)

/** The newest answer of one kind at each point, whichever step it was given at. */
export function newestOfKind(readings: Readings, kind: ReadingKind): EffectiveReading[] {
  const byPoint = new Map<string, EffectiveReading>()
  for (const reading of readings) if (reading.kind === kind) byPoint.set(reading.point, reading)
  return [...byPoint.values()]
}

/** The choice or words of the newest answer; '' when there is none. */
export const newestText = (readings: Readings, kind: ReadingKind): string =>
  newestOfKind(readings, kind).at(-1)?.text ?? ''

type Answer = Pick<EffectiveReading, 'kind' | 'text' | 'unit' | 'notTaken'>

/** An answer as it prints: a figure with its unit as typed, a choice by its label, "not taken: why". */
export function answerWords(reading: Answer): string {
  const spec = readingSpecs[reading.kind]
  if (reading.notTaken !== null && reading.notTaken !== '') return `not taken: ${reading.notTaken}`
  if (spec.form === 'choice') {
    const chosen = spec.choices?.find((choice) => choice.value === reading.text)
    return chosen ? lower(chosen.label) : reading.text
  }
  return typedFigure(reading)
}

/** A figure alone, as typed when it was typed in the wanted unit, so that 64.20 stays 64.20. */
export function bareText(reading: Valued, unit: string): string {
  const { quantity } = readingSpecs[reading.kind]
  const asTyped = /^\d+([.,]\d+)?$/.test(reading.text) && reading.unit === unit
  return asTyped || !quantity ? reading.text : formatBare(reading.value, quantity, unit)
}
