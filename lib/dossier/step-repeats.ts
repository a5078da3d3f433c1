import { mean } from '@/lib/core/mean'
import type { StepKey } from '@/lib/core/route/step-ids'
import { repeatsAt } from './answer-repeats'
import type { Dossier } from './dossier'
import type { Repeats, StepField } from './step-fields'

/** The fields with the readings of each chamber that stand at this step. */
export const withRepeats =
  (dossier: Dossier, step: StepKey) =>
  (field: StepField): StepField => {
    if (field.kind !== 'cc') return field
    const repeats = repeatsOf(dossier, step, field.point)
    return repeats ? { ...field, repeats } : field
  }

function repeatsOf(dossier: Dossier, step: StepKey, point: string): Repeats | null {
  const standing = repeatsAt(dossier, step, point)
  if (standing.length === 0) return null
  const values = standing.flatMap(({ value }) => value ?? [])
  const marked = standing.map(({ text, repeat }) => (repeat === 'far' ? `${text} (far off, kept)` : text))
  return {
    values: standing.map(({ id, text }) => ({ id, text })),
    words: `${marked.join(', ')}${values.length > 1 ? `: ${spreadWords(values)}` : ', 1 reading'}`,
  }
}

const spreadWords = (values: readonly number[]): string => {
  const spread = Math.max(...values) - Math.min(...values)
  return `mean ${mean(values).toFixed(1)}, spread ${spread.toFixed(1)}, ${values.length} readings`
}
