import type { ReadingKind } from '@/lib/core/readings/types'
import type { SpecLine } from '@/lib/core/spec/spec-sheet'
import { wantedLines } from '@/lib/core/wanted/at-step'
import { groupOfReading } from '@/lib/core/wanted/of-reading'
import { besideMeasured, wantedGroupWords } from '@/lib/words/wanted'
import type { Dossier } from '../dossier'

/** What the answers of one kind should have come to; null: nobody said. */
export function specWanted(
  { wanted, visit: { job } }: Pick<Dossier, 'wanted' | 'visit'>,
  kind: ReadingKind,
  points: readonly string[],
): NonNullable<SpecLine['wanted']> | null {
  if (kind === 'finish') return job.finishAsked === '' ? null : { label: 'wanted', value: job.finishAsked }
  const named = kind === 'seat-angles' ? (['seat-angle'] as const) : points.map((point) => groupOfReading(kind, point))
  const groups = [...new Set(named)].filter((group) => group !== null)
  const [first, ...more] = wantedLines(groups, wanted)
  if (!first) return null
  const beside = besideMeasured(first)
  if (groups.length === 1) return beside
  // Of springs one kind of reading answers to two figures.
  const told = [first, ...more].map(
    (line) => `${wantedGroupWords(line.group).toLowerCase()} ${besideMeasured(line).value}`,
  )
  return { label: beside.label, value: told.join('; ') }
}
