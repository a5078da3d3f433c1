import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { ok, refuse, type Result } from '../errors'
import { firstGuessOf, flooredU, type Rate } from './rate'
import { betweenHeadFact, depthErrorFact, rateFacts, uncertaintyFact } from './rate-facts'

/** One head's cut with cc before and after: the first reading before it, the last after it, and the depth between. */
export type RateCut = {
  /** Depth taken at the chamber's centroid. */
  readonly depthThou: number
  readonly beforeCc: number
  readonly uBeforeCc: number
  readonly afterCc: number
  readonly uAfterCc: number
  /** False when seat, valve, chamber or port work lies between the two, or other checking valves were in. */
  readonly likeForLike: boolean
  /** Standard uncertainty of its depth; left out: that of a depth setting. */
  readonly uDepthThou?: number
}

/** What scatters an observation besides its cc. */
export type Scatter = {
  /** u_d: standard uncertainty of a depth setting, in thou. */
  readonly depthErrorThou: number
  /** Spread between heads as a part of the first guess; 0: all cuts are of one head. */
  readonly betweenHeadPart: number
}

/**
 * How far the volume that one cut took may lie from k·d of its casting, as one standard deviation in cc.
 *
 * @param firstGuessCcPerThou k₀, in cc per thou
 *
 * u² = u_b² + u_a² + (k₀·u_d)² + (τ·d)², τ = part·k₀. Example: 20 thou, each cc ±0.3, half a thou, 3 % of 1/6 →
 * √(0.18 + 0.00694 + 0.01) = 0.4438. Derived: independent uncertainties add in squares.
 */
export const scatterCc = (cut: RateCut, firstGuessCcPerThou: number, by: Scatter): number =>
  Math.hypot(
    cut.uBeforeCc,
    cut.uAfterCc,
    firstGuessCcPerThou * (cut.uDepthThou ?? by.depthErrorThou),
    by.betweenHeadPart * firstGuessCcPerThou * cut.depthThou,
  )

/**
 * What cuts teach about a rate.
 *
 * @param prior what was believed before, in cc per thou
 * @param cuts one a head, in any order; depths in thou (0.1–500), cc 1–400, uncertainties in cc (0–20)
 * @param depthErrorThou standard uncertainty of a depth setting, in thou (0–20, default 0.5)
 * @param betweenHeadPart spread between heads as a part of the first guess (0–1; 0, when left out: cuts of one head)
 * @returns the posterior; cuts that are not like for like are passed over and not counted
 *
 * One cut says k = V/d with variance (u_b² + u_a² + (k₀·u_d)²)/d² + τ²; the posterior is the mean of prior and cuts by
 * weights 1/variance, with 1/Σ weights as its variance. k₀ is the prior's, so that the order does not matter.
 * Example: prior 0.1667 ± 0.0083, 10 thou took 1.60 cc, each cc known to 0.1 → noise 0.1641 cc, k = 0.1653 ± 0.0074.
 * Derived: means weighted by the inverse of their variances.
 */
export function learnRate(
  prior: Rate,
  cuts: readonly RateCut[],
  depthErrorThou = 0.5,
  betweenHeadPart = 0,
): Result<Rate> {
  const scatter = { depthErrorThou, betweenHeadPart }
  let rate = prior
  for (const cut of cuts.filter((one) => one.likeForLike)) {
    const next = learnFromOne(rate, cut, scatter)
    if (!next.ok) return next
    rate = next.value
  }
  if (rate === prior) return ok(prior)
  return ok({ ...rate, uCcPerThou: flooredU(rate.uCcPerThou, firstGuessOf(prior)) })
}

/** One cut is weighed in at a time: with one k₀ for all that is the weighted mean, and a certain cut divides by no nought. */
function learnFromOne(rate: Rate, cut: RateCut, scatter: Scatter): Result<Rate> {
  const firstGuessCcPerThou = firstGuessOf(rate)
  const facts = knownFacts({
    depthThou: ['depth of the cut in thou', cut.depthThou, 0.1, 500],
    beforeCc: factOf('cc before', cut.beforeCc, 'chamberVolume'),
    uBeforeCc: uncertaintyFact('uncertainty of the cc before', cut.uBeforeCc),
    afterCc: factOf('cc after', cut.afterCc, 'chamberVolume'),
    uAfterCc: uncertaintyFact('uncertainty of the cc after', cut.uAfterCc),
    depthErrorThou: depthErrorFact(cut.uDepthThou ?? scatter.depthErrorThou),
    betweenHeadPart: betweenHeadFact(scatter.betweenHeadPart),
    firstGuessCcPerThou: ['first guess of the rate in cc per thou', firstGuessCcPerThou, 1e-6, 10],
    ...rateFacts(rate),
  })
  if (!facts.ok) return facts
  const { depthThou: depth, beforeCc, afterCc, ccPerThou, uCcPerThou } = facts.value
  const noise = scatterCc(cut, firstGuessCcPerThou, scatter)
  const spread = Math.hypot(uCcPerThou * depth, noise)
  // Both zero: nothing is uncertain, so there is nothing to learn.
  const share = spread === 0 ? 0 : (uCcPerThou * depth) / spread
  const learned = ccPerThou + (share ** 2 * (beforeCc - afterCc - ccPerThou * depth)) / depth
  if (!(learned > 0)) {
    return refuse(
      'contradiction',
      `A cut of ${depth} thou is on record that took no volume: correct its cc or its depth.`,
    )
  }
  const left = spread === 0 ? 1 : noise / spread
  return ok({ ...rate, ccPerThou: learned, uCcPerThou: uCcPerThou * left, cuts: rate.cuts + 1, firstGuessCcPerThou })
}

/**
 * The cuts to learn from for a cut of a given depth: a drafted wall makes a long cut's rate overstate a short one.
 *
 * @param depthThou the depth asked, in thou
 * @returns the cuts between half and twice that depth; all of them when none is
 */
export function cutsLikeDepth<C extends RateCut>(cuts: readonly C[], depthThou: number): readonly C[] {
  const like = cuts.filter((cut) => cut.depthThou >= depthThou / 2 && cut.depthThou <= depthThou * 2)
  return like.length > 0 ? like : cuts
}
