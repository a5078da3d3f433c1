import { markFor, type Limits, type Mark } from '@/app/_components/keypad/validation-hint'
import type { ExpectedFacts } from '@/lib/core/expected/types'
import { isValveKind } from '@/lib/core/readings/valve-kinds'
import { quantities } from '@/lib/core/units/quantities'
import { cellLimits } from '@/lib/core/valve-sheet/cell-limits'
import type { StepField } from '@/lib/use-cases/stations/see-step'
import { limitWords } from '@/lib/words/valve-sheet'
import type { CellAsk } from '../cell-asks'

/** Between which figures a cell is in tolerance, and how that reads; null: nothing limits it. */
export function limitsOf(field: StepField, facts: ExpectedFacts | null): (Limits & { words: string }) | null {
  const { kind, point, spec, target } = field
  const { quantity } = spec
  if (!quantity) return null
  if (target) return { lowest: target.lowest, highest: target.highest, words: target.text }
  const limits = facts !== null && isValveKind(kind) ? cellLimits(kind, point, facts) : null
  if (!limits) return null
  const { least, most } = quantities[quantity]
  const words = limitWords(limits, quantity)
  return { lowest: limits.lowest ?? least, highest: limits.highest ?? most, words }
}

/** What is said of a cell: the server first, then what cannot be, then what is unlikely, then its limits. */
export function markOf(
  field: StepField,
  text: string,
  facts: ExpectedFacts | null,
  { error, ask, asked }: { error: string | undefined; ask: CellAsk | undefined; asked: boolean },
): Mark {
  const { quantity } = field.spec
  const stop = error || (asked ? ask?.stop : '')
  if (stop) return { kind: 'refused', words: stop }
  if (!quantity) return { kind: 'none', words: '' }
  const mark = markFor(text, quantity, limitsOf(field, facts) ?? undefined)
  if (mark.kind === 'refused' || !asked || !ask?.unlikely) return mark
  return { kind: 'out', words: `${ask.unlikely} ${ask.confirmed ? 'Confirmed.' : 'Type it again to keep it.'}` }
}
