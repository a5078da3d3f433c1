import { ok, refuse, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { mean } from '../mean'
import {
  noRepeats,
  pooledSpreadCc,
  repeatabilityOf,
  sumOfTallies,
  tallyOf,
  type Repeatability,
  type RepeatTally,
} from './repeatability'

export type ChamberMean = {
  readonly meanCc: number
  readonly rangeCc: number
  /** Standard uncertainty of the mean of its repeats. */
  readonly uCc: number
  readonly count: number
  /** s_p: standard deviation of one reading of this chamber. */
  readonly readingCc: number
}

/** One set of repeats of this visit, known by its readings, so that a chamber's own can be left out. */
export type OwnRepeats = { readonly ids: readonly string[]; readonly tally: RepeatTally }

export type BuretteFacts = {
  /** Smallest division of the burette, in cc. */
  readonly divisionCc: number
  /** Standard deviation of one reading while the shop has too few repeats of its own; in cc. */
  readonly repeatabilityCc: number
  /** Repeats of the shop's other heads. */
  readonly others?: RepeatTally
  /** Those of this head. */
  readonly own?: readonly OwnRepeats[]
}

/**
 * The spread of one reading in this shop, without the repeats of the chamber at hand, in cc: `repeatabilityOf`.
 *
 * @param ids readings of that chamber, which do not judge themselves
 *
 * Example: no repeats anywhere → the default. Derived: the shop's tallies less the chamber's own.
 */
export function shopRepeatability(burette: BuretteFacts, ids: readonly string[]): Repeatability {
  const { others = noRepeats, own = [] } = burette
  const left = own.filter((set) => !set.ids.some((id) => ids.includes(id)))
  return repeatabilityOf(sumOfTallies([others, ...left.map(({ tally }) => tally)]), burette.repeatabilityCc)
}

/**
 * One chamber from its repeats under one condition.
 *
 * @param readingsCc cc of each repeat, 1–400
 * @param ids of these readings, which are left out of what the shop knows
 * @returns mean, range and standard uncertainty in cc; refused when there is no reading or one is impossible
 *
 * u² = s_p²/n + r²/12, s_p from `pooledSpreadCc`, r the division (a reading is uniform within one). Source: JCGM 100:2008
 * (GUM) 4.2.4 and 4.3.7.
 * Example: 62.1, 62.3 with division 0.2 and the default 0.3 → 62.2, range 0.2, u = √(0.09/2 + 0.04/12) = 0.220.
 */
export function chamberMean(
  readingsCc: readonly number[],
  facts: BuretteFacts,
  ids: readonly string[] = [],
): Result<ChamberMean> {
  const n = readingsCc.length
  if (n === 0) return refuse('missing', 'Needs a cc reading of this chamber.', { needs: ['cc'] })
  const others = facts.others ?? noRepeats
  const possible = knownFacts({
    smallestCc: factOf('chamber', Math.min(...readingsCc), 'chamberVolume'),
    largestCc: factOf('chamber', Math.max(...readingsCc), 'chamberVolume'),
    divisionCc: ['burette division', facts.divisionCc, 0, 10],
    repeatabilityCc: ['spread of one reading', facts.repeatabilityCc, 0, 20],
    squaresCc2: ['repeats of the shop', others.squaresCc2, 0, 1e12],
    degrees: ['number of repeats of the shop', others.degrees, 0, 1e9],
  })
  if (!possible.ok) return possible
  const readingCc = pooledSpreadCc(tallyOf(readingsCc), shopRepeatability(facts, ids))
  return ok({
    meanCc: mean(readingsCc),
    rangeCc: Math.max(...readingsCc) - Math.min(...readingsCc),
    uCc: uncertaintyOfMeanCc(readingCc, n, facts.divisionCc),
    count: n,
    readingCc,
  })
}

/**
 * Standard uncertainty of the mean of n repeats, in cc: √(s²/n + r²/12).
 *
 * @param readingCc s, standard deviation of one reading, in cc
 * @param divisionCc r, division of the burette, in cc
 *
 * Example: 0.3 cc, two readings, division 0.2 → √(0.045 + 0.04/12) = 0.220. Source: JCGM 100:2008 (GUM) 4.2.3 and 4.3.7.
 */
export const uncertaintyOfMeanCc = (readingCc: number, count: number, divisionCc: number): number =>
  Math.sqrt(readingCc ** 2 / count + divisionCc ** 2 / 12)

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
