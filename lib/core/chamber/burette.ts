import { ok, refuse, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { mean } from '../mean'

export type ChamberMean = {
  readonly meanCc: number
  readonly rangeCc: number
  /** Standard uncertainty of the mean of its repeats. */
  readonly uCc: number
  readonly count: number
}

export type BuretteFacts = {
  /** Smallest division of the burette, in cc. */
  readonly divisionCc: number
  /** Standard deviation of one reading in this shop, where a chamber was read once; in cc. */
  readonly repeatabilityCc: number
}

/**
 * One chamber from its repeats.
 *
 * @param readingsCc cc of each repeat, 1–400
 * @returns mean, range and standard uncertainty in cc; refused when there is no reading or one is impossible
 *
 * u² = s²/n + r²/12, s with n − 1, r the division (a reading is uniform within one). One reading alone takes the shop's
 * own repeatability for s. Source: JCGM 100:2008 (GUM) 4.2 and 4.3.7.
 * Example: 62.1, 62.3 with division 0.2 → 62.2, range 0.2, u = √(0.02/2 + 0.04/12) = 0.115.
 */
export function chamberMean(readingsCc: readonly number[], facts: BuretteFacts): Result<ChamberMean> {
  const n = readingsCc.length
  if (n === 0) return refuse('missing', 'Needs a cc reading of this chamber.', { needs: ['cc'] })
  const possible = knownFacts({
    smallestCc: factOf('chamber', Math.min(...readingsCc), 'chamberVolume'),
    largestCc: factOf('chamber', Math.max(...readingsCc), 'chamberVolume'),
    divisionCc: ['burette division', facts.divisionCc, 0, 10],
    repeatabilityCc: ['spread of one reading', facts.repeatabilityCc, 0, 20],
  })
  if (!possible.ok) return possible
  const meanCc = mean(readingsCc)
  const squares = readingsCc.reduce((sum, cc) => sum + (cc - meanCc) ** 2, 0)
  const s2 = n === 1 ? facts.repeatabilityCc ** 2 : squares / (n - 1)
  return ok({
    meanCc,
    rangeCc: Math.max(...readingsCc) - Math.min(...readingsCc),
    uCc: Math.sqrt(s2 / n + facts.divisionCc ** 2 / 12),
    count: n,
  })
}

export type HeadCc = {
  readonly meanCc: number
  readonly spreadCc: number
  readonly smallestCc: number
  readonly largestCc: number
  /** Standard uncertainty of the mean over the chambers. */
  readonly uCc: number
  /** And of the smallest chamber. */
  readonly uSmallestCc: number
}

/**
 * A head from its chambers.
 *
 * @param chambers one a chamber, from `chamberMean`
 * @returns mean, spread (largest − smallest), smallest, largest, in cc
 *
 * The chambers' errors are taken as independent: u of the mean is the root of the sum of squares over n.
 * Example: 62.0, 62.4, 62.2, 61.8 → mean 62.1, spread 0.6.
 * Derived: independent uncertainties add in squares.
 */
export function headCc(chambers: readonly ChamberMean[]): Result<HeadCc> {
  const smallest = chambers.reduce<ChamberMean | null>(
    (least, one) => (least && least.meanCc <= one.meanCc ? least : one),
    null,
  )
  if (!smallest) return refuse('missing', 'Needs the cc of at least one chamber.', { needs: ['cc'] })
  const means = chambers.map((chamber) => chamber.meanCc)
  const n = chambers.length
  return ok({
    meanCc: mean(means),
    spreadCc: Math.max(...means) - smallest.meanCc,
    smallestCc: smallest.meanCc,
    largestCc: Math.max(...means),
    uCc: Math.sqrt(chambers.reduce((sum, chamber) => sum + chamber.uCc ** 2, 0)) / n,
    uSmallestCc: smallest.uCc,
  })
}
