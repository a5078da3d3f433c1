import type { Quantity } from '@/lib/core/units/quantities'
import { parseFigure } from '@/lib/core/units/parse-figure'

/** Shop tolerance of one figure, in the core's unit. Outside it may be saved, and is marked. */
export type Limits = {
  lowest?: number
  highest?: number
  /** How the tolerance reads: "59.5 to 60.5 cc". */
  words?: string
}

export type Mark =
  | { kind: 'none'; words: '' }
  /** Understood, and inside the tolerance where there is one. */
  | { kind: 'read'; words: string }
  /** Out of tolerance: may be saved. */
  | { kind: 'out'; words: string }
  /** Impossible, ambiguous or no figure: may not be saved. */
  | { kind: 'refused'; words: string }

/** What is to be said about a typed figure at once; what the server said of it comes first. */
export function markFor(text: string, quantity: Quantity, limits?: Limits, error?: string): Mark {
  if (error) return { kind: 'refused', words: error }
  if (text.trim() === '') return { kind: 'none', words: '' }
  const parsed = parseFigure(text, quantity)
  if (!parsed.ok) return { kind: 'refused', words: parsed.refusal.message }
  const { value, echo } = parsed.value
  const { lowest = -Infinity, highest = Infinity, words } = limits ?? {}
  const side = value < lowest - rounding ? 'under' : value > highest + rounding ? 'over' : null
  if (side) return { kind: 'out', words: `${echo}: ${side} tolerance${words ? `, ${words}` : ''}` }
  return { kind: 'read', words: echo }
}

/** Decimals are not exact in binary: 0.0700 is still within 0.060 ± 0.010. */
const rounding = 1e-9
