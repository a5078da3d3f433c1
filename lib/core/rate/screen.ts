import { learnRate, scatterCc, type RateCut, type Scatter } from './learn'
import { firstGuessOf, flooredU, type Rate } from './rate'

/** What the owner has decided about a cut. */
export type Ruling = 'count' | 'leave-out'

/** A cut, with what has been asked and decided about it. */
export type CutToJudge = RateCut & {
  /** Null: the owner has decided nothing. */
  readonly ruling?: Ruling | null
  /** It was asked about and nobody has answered: it stays out, whatever later cuts say. */
  readonly questioned?: boolean
}

export type JudgedCut = {
  /** How many standard deviations it lies from what all other counted cuts say; null: it is not judged. */
  readonly z: number | null
  readonly verdict: 'counted' | 'screened' | 'left-out' | 'not-like-for-like'
}

/** A cut further off than this is asked about. */
export const screenLimit = 3.5

/**
 * How far one cut lies from what the others say, in standard deviations.
 *
 * @param rate of the prior and all other counted cuts, in cc per thou
 *
 * z = (V − k̂·d)/√(u_b² + u_a² + (k₀·u_d)² + (τ·d)² + (u_k·d)²), k₀ the prior's. Example: 1.3 cc for 20 thou, each cc
 * ±0.15, by 1/6 ± 0.00833 → −2.0333/√(0.045 + 0.00694 + 0.01 + 0.02778) = −6.79.
 * Derived: the difference over the root of the sum of its variances.
 */
export function zOfCut(cut: RateCut, rate: Rate, by: Scatter): number {
  const firstGuess = firstGuessOf(rate)
  const spread = Math.hypot(scatterCc(cut, firstGuess, by), flooredU(rate.uCcPerThou, firstGuess) * cut.depthThou)
  return (cut.beforeCc - cut.afterCc - rate.ccPerThou * cut.depthThou) / spread
}

/**
 * Which cuts a rate may be learned from: the one furthest off is left out, then all are judged again, until none lies
 * further than 3.5 standard deviations from what the prior and all other counted cuts say.
 *
 * @param prior in cc per thou; its own mean stands in all variances
 * @param cuts one a head, in any order; depths in thou, cc and their uncertainties in cc
 * @returns one verdict a cut, in their order; a cut that the owner counts is never screened
 *
 * Example: two cuts of 20 thou that took 3.3 cc and one that took 1.3, each cc ±0.15, by an outline → the third screened.
 * Derived: `zOfCut` against `learnRate` of the others.
 */
export function screenCuts(prior: Rate, cuts: readonly CutToJudge[], by: Scatter): readonly JudgedCut[] {
  const verdicts = cuts.map(firstVerdict)
  for (;;) {
    const zs = cuts.map((cut, at) => zAgainstOthers(prior, cuts, verdicts, at, cut, by))
    const worst = zs.reduce<number | null>((most, z, at) => {
      const asked = verdicts[at] === 'counted' && cuts[at]?.ruling !== 'count' && Math.abs(z ?? 0) > screenLimit
      return asked && (most === null || Math.abs(z ?? 0) > Math.abs(zs[most] ?? 0)) ? at : most
    }, null)
    if (worst === null) return zs.map((z, at) => ({ z, verdict: verdicts[at] ?? 'counted' }))
    verdicts[worst] = 'screened'
  }
}

function firstVerdict({ likeForLike, ruling, questioned }: CutToJudge): JudgedCut['verdict'] {
  if (!likeForLike) return 'not-like-for-like'
  if (ruling === 'leave-out') return 'left-out'
  return questioned && ruling !== 'count' ? 'screened' : 'counted'
}

function zAgainstOthers(
  prior: Rate,
  cuts: readonly CutToJudge[],
  verdicts: readonly JudgedCut['verdict'][],
  at: number,
  cut: CutToJudge,
  by: Scatter,
): number | null {
  if (!cut.likeForLike) return null
  const others = cuts.filter((_, place) => place !== at && verdicts[place] === 'counted')
  const rate = learnRate(prior, others, by.depthErrorThou, by.betweenHeadPart)
  if (!rate.ok) return null
  const z = zOfCut(cut, rate.value, by)
  return Number.isFinite(z) ? z : null
}
