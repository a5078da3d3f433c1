import { readingSpecs } from './specs'
import type { ReadingFact } from './types'

/**
 * Whether a reading answers its question. A figure needs its value, unless the kind may be answered in words; a lift that
 * could not be flowed counts with its reason. A choice or a note needs its text.
 */
export function answers(reading: ReadingFact): boolean {
  const spec = readingSpecs[reading.kind]
  const inWords = spec.mayBeWords === true && (said(reading.text) || said(reading.notTaken))
  if (spec.form === 'figure') return inWords || (reading.value !== null && reading.notTaken === null)
  return inWords || (said(reading.text) && reading.notTaken === null)
}

/** The choice that was made, when it means: stop, put the head on hold. */
export function badChoice(reading: ReadingFact): { readonly value: string; readonly label: string } | null {
  const choices = readingSpecs[reading.kind].choices ?? []
  return choices.find((choice) => choice.bad && choice.value === reading.text) ?? null
}

const said = (text: string | null): boolean => text !== null && text.trim() !== ''
