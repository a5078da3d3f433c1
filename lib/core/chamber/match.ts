import { refuse, ok, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { mean } from '../mean'

export type ChamberOfHead = {
  readonly tag: string
  /** From the marked end: 1 … n. */
  readonly chamber: number
  readonly cc: number
}

export type Match = {
  /** Over all chambers given: of a head, or of both heads of a pair. */
  readonly meanCc: number
  readonly spreadCc: number
  readonly matched: boolean
  /** Those outside, with how far from the mean; too small: negative. */
  readonly outside: readonly (ChamberOfHead & { readonly offCc: number })[]
}

/**
 * Whether the chambers of a head, or of a pair, agree.
 *
 * @param chambers mean cc of each, 1–400
 * @param toleranceCc each within this of the mean, 0–20; default 0.5 [common practice, from memory], a shop setting
 *
 * Example: 62.0, 62.4, 62.2, 61.8 → mean 62.1, spread 0.6, matched.
 */
export function matchChambers(chambers: readonly ChamberOfHead[], toleranceCc = 0.5): Result<Match> {
  if (chambers.length === 0) return refuse('missing', 'Needs the cc of at least one chamber.', { needs: ['cc'] })
  const volumes = chambers.map((chamber) => chamber.cc)
  const smallestCc = Math.min(...volumes)
  const largestCc = Math.max(...volumes)
  const facts = knownFacts({
    smallestCc: factOf('chamber', smallestCc, 'chamberVolume'),
    largestCc: factOf('chamber', largestCc, 'chamberVolume'),
    toleranceCc: ['tolerance of the match', toleranceCc, 0, 20],
  })
  if (!facts.ok) return facts
  const meanCc = mean(volumes)
  const outside = chambers
    .map((chamber) => ({ ...chamber, offCc: chamber.cc - meanCc }))
    .filter(({ offCc }) => Math.abs(offCc) > toleranceCc + 1e-9)
  return ok({ meanCc, spreadCc: largestCc - smallestCc, matched: outside.length === 0, outside })
}
