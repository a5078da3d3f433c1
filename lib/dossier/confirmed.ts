import { pointLabel } from '@/lib/core/readings/points'
import { readingSpecs } from '@/lib/core/readings/specs'
import type { ReadingKind } from '@/lib/core/readings/types'
import { storedHeldAgainst } from '@/lib/data/stored/held-against'
import { confirmedWords } from '@/lib/words/expected'
import type { Dossier } from './dossier'
import { answerWords } from './reading-text'

type Kept = {
  readonly id: string
  readonly kind: string
  readonly confirmed: boolean
  readonly heldAgainst: string | null
}

/** "confirmed; 62.4 to 65.4 cc expected, by the other chambers" of a reading that was typed twice; '' of any other. */
export function confirmedText({ id, kind, confirmed, heldAgainst }: Kept): string {
  if (!confirmed) return ''
  return confirmedWords(kind as ReadingKind, heldAgainst === null ? null : storedHeldAgainst.read(heldAgainst, id))
}

/** The readings that stand though unlikely, each in a sentence: whoever releases the head sees them. */
export const confirmedCautions = ({ newest }: Pick<Dossier, 'newest'>): string[] =>
  newest
    .filter(({ confirmed }) => confirmed)
    .map((reading) => {
      const label = [readingSpecs[reading.kind].label, pointLabel(reading.point)]
        .filter((part) => part !== '')
        .join(', ')
      return `${label}: ${answerWords(reading)}, ${confirmedText(reading)}.`
    })
