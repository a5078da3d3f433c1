import type { CastingFacts } from '../casting/figures'
import type { Result } from '../errors'
import { priorRate, type Rate } from './rate'

/**
 * The rate a casting record gives before any cut: from the traced opening if it has one, else from the perimeter, else
 * from the figure the shop goes by, else the trade's usual one. Units and uncertainty as in `priorRate`.
 * Example: opening area 10.1706 in² → 6.0 thou per cc, known to 5 %.
 * Derived: as `priorRate`, from what the record has.
 */
export function rateOfRecord(facts: CastingFacts): Result<Rate> {
  if (facts.openingAreaIn2 !== undefined) return priorRate({ kind: 'outline', openingAreaIn2: facts.openingAreaIn2 })
  if (facts.perimeterIn !== undefined) return priorRate({ kind: 'perimeter', perimeterIn: facts.perimeterIn })
  return priorRate({ kind: 'none', thouPerCc: facts.thouPerCc ?? null })
}
