import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { ok, refuse, type Result } from '../errors'
import type { Rate } from './rate'
import { depthErrorFact, rateFacts, uncertaintyFact } from './rate-facts'

/** One cut with cc before and after: one head's mean each time. */
export type RateCut = {
  /** Depth taken at the chamber's centroid. */
  readonly depthThou: number
  readonly beforeCc: number
  readonly uBeforeCc: number
  readonly afterCc: number
  readonly uAfterCc: number
  /** False when seat, valve, chamber or port work lies between the two, or other checking valves were in. */
  readonly likeForLike: boolean
}

/**
 * What the shop's own cuts teach about a rate.
 *
 * @param prior what was believed before, in cc per thou
 * @param cuts in the order they were made; depths in thou (0.1–500), cc 1–400, uncertainties in cc (0–20)
 * @param depthErrorThou standard uncertainty of a depth setting, in thou (0–20, default 0.5)
 * @returns the posterior; cuts that are not like for like are passed over and not counted
 *
 * Assumes volume taken = k·depth with k normal. Conjugate normal update, one cut at a time: noise
 * u² = u_before² + u_after² + (k̂·u_d)² with k̂ as believed before the cut; gain g = P·d/(P·d² + u²);
 * k ← k + g·(ΔV − k·d); P ← P·u²/(P·d² + u²).
 * Example: prior 0.1667 ± 0.0083, 10 thou took 1.60 cc, each cc known to 0.1 → noise 0.1641 cc, k = 0.1653 ± 0.0074.
 * Derived: means weighted by the inverse of their variances.
 */
export function learnRate(prior: Rate, cuts: readonly RateCut[], depthErrorThou = 0.5): Result<Rate> {
  let rate = prior
  for (const cut of cuts.filter((one) => one.likeForLike)) {
    const next = learnFromOne(rate, cut, depthErrorThou)
    if (!next.ok) return next
    rate = next.value
  }
  return ok(rate)
}

function learnFromOne(rate: Rate, cut: RateCut, depthErrorThou: number): Result<Rate> {
  const facts = knownFacts({
    depthThou: ['depth of the cut in thou', cut.depthThou, 0.1, 500],
    beforeCc: factOf('cc before', cut.beforeCc, 'chamberVolume'),
    uBeforeCc: uncertaintyFact('uncertainty of the cc before', cut.uBeforeCc),
    afterCc: factOf('cc after', cut.afterCc, 'chamberVolume'),
    uAfterCc: uncertaintyFact('uncertainty of the cc after', cut.uAfterCc),
    depthErrorThou: depthErrorFact(depthErrorThou),
    ...rateFacts(rate),
  })
  if (!facts.ok) return facts
  const { depthThou: depth, beforeCc, afterCc, ccPerThou, uCcPerThou } = facts.value
  const noise = Math.hypot(facts.value.uBeforeCc, facts.value.uAfterCc, ccPerThou * depthErrorThou)
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
  return ok({ ...rate, ccPerThou: learned, uCcPerThou: uCcPerThou * left, cuts: rate.cuts + 1 })
}

/**
 * The cuts to learn from for a cut of a given depth: a drafted wall makes a long cut's rate overstate a short one.
 *
 * @param depthThou the depth asked, in thou
 * @returns the cuts between half and twice that depth; all of them when none is
 */
export function cutsLikeDepth(cuts: readonly RateCut[], depthThou: number): readonly RateCut[] {
  const like = cuts.filter((cut) => cut.depthThou >= depthThou / 2 && cut.depthThou <= depthThou * 2)
  return like.length > 0 ? like : cuts
}
