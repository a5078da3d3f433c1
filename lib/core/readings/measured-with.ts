import { quantities } from '../units/quantities'
import { readingSpecs } from './specs'
import type { ReadingKind } from './types'

/** Kinds of instrument that can measure a kind of reading; none for words and choices. */
export function measuredWith(kind: ReadingKind): readonly string[] {
  const { quantity } = readingSpecs[kind]
  if (!quantity) return []
  const { family } = quantities[quantity]
  if (family === 'volume') return ['burette']
  return family === 'flow' ? ['flow bench'] : ['gauge', 'other']
}
