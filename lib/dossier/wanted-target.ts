import { readingSpecs } from '@/lib/core/readings/specs'
import type { ReadingKind } from '@/lib/core/readings/types'
import type { RouteStep } from '@/lib/core/route/types'
import { quantities } from '@/lib/core/units/quantities'
import { wantedOfReading } from '@/lib/core/wanted/of-reading'
import { wantedSpanWords } from '@/lib/words/wanted'
import type { Dossier } from './dossier'
import type { FieldTarget } from './step-fields'

/** What a cell should read by what is wanted of its head, with the shop's tolerance; null: nothing is wanted. */
export function wantedTarget(
  { wanted, settings }: Pick<Dossier, 'wanted' | 'settings'>,
  { stepId }: Pick<RouteStep, 'stepId'>,
  kind: ReadingKind,
  point: string,
): FieldTarget | null {
  // A head that comes in warped is no fault of the bench that measures it.
  if (stepId === 'thickness') return null
  const { quantity } = readingSpecs[kind]
  const span = quantity && wantedOfReading(kind, point, wanted, settings)
  if (!quantity || !span) return null
  const { least, most } = quantities[quantity]
  return { text: wantedSpanWords(span, quantity), lowest: span.low ?? least, highest: span.high ?? most }
}
