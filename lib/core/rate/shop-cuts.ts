import { ok, type Result } from '../errors'
import { cutsLikeDepth, learnRate, type RateCut } from './learn'
import { cutsThatProve, type Rate } from './rate'
import type { ShopCut } from './shop-cut'
import type { EdgeDepths } from '../straightness/corners-fit'

/** A cut as it stands in the list of a casting: what it teaches, or why it teaches nothing. */
export type TaughtCut = {
  /** Null: depth or cc are not known. */
  readonly cut: RateCut | null
  readonly whyNot: string
}

/**
 * What one head's cut says of the rate of its casting.
 *
 * @param cut depths at both edges in inches, cc before and after
 * @param centroidShare where the chamber's opening has its centre, as a part of the milled width from the shallow edge;
 *   null: not known, which only a cut of one depth all over can do without
 * @returns depth at the centroid in thou; `likeForLike` is false, and `whyNot` says why, when it must not be counted
 *
 * Example: 20 thou at one edge, 83 at the other, share 0.635 → 60.0 thou.
 * Derived: cc taken over depth at the centroid.
 */
export function taughtBy(
  { edges, before, after, whyNot }: Omit<ShopCut, 'seq'>,
  centroidShare: number | null,
): TaughtCut {
  if (!edges || !before || !after) return { cut: null, whyNot }
  const depthIn = depthAtCentroidIn(edges, centroidShare)
  if (depthIn === null) {
    return { cut: null, whyNot: 'the casting record gives no centre of the opening between the edges' }
  }
  const depthThou = depthIn * 1000
  const said = whyNot || impossible(depthThou, before.cc - after.cc)
  return {
    cut: {
      depthThou,
      beforeCc: before.cc,
      uBeforeCc: before.uCc,
      afterCc: after.cc,
      uAfterCc: after.uCc,
      likeForLike: said === '',
    },
    whyNot: said,
  }
}

/**
 * Depth of a cut at the chamber's centroid, in inches: shallow + (deep − shallow)·share; null when a tilted cut's share
 * is not known, or not between the edges (0–1). Example: 0.020 and 0.083, share 0.635 → 0.060.
 * Derived: the straight line between both edges.
 */
export function depthAtCentroidIn(edges: EdgeDepths, centroidShare: number | null): number | null {
  const tiltIn = edges.deepIn - edges.shallowIn
  if (tiltIn === 0) return edges.shallowIn
  const between = centroidShare !== null && centroidShare >= 0 && centroidShare <= 1
  return between ? edges.shallowIn + tiltIn * centroidShare : null
}

/** Depths that `learnRate` takes. */
const shallowestThou = 0.1
const deepestThou = 500

function impossible(depthThou: number, tookCc: number): string {
  if (!(depthThou >= shallowestThou && depthThou <= deepestThou)) return 'its depth is not possible: correct it'
  return tookCc > 0 ? '' : 'it took no volume: correct its cc or its depth'
}

/**
 * The rate of a casting and chamber form, learned from the shop's own cuts of it.
 *
 * @param prior what the casting record gives, in cc per thou
 * @param cuts in the order they were made, depths in thou (0.1–500)
 * @param depthThou the depth asked, in thou, so that long cuts do not teach a short one; null: all cuts alike
 * @param depthErrorThou standard uncertainty of a depth setting, in thou (0–20, default 0.5)
 * @returns `learnRate` over `cutsLikeDepth` of the cuts that are like for like
 *
 * Example: prior 0.1667 ± 0.0083 and one cut of 10 thou that took 1.60 cc, each cc known to 0.1 → 0.1653 ± 0.0074.
 * Derived: as `learnRate`, over all heads of the casting.
 */
export function castingRate(
  prior: Rate,
  cuts: readonly RateCut[],
  depthThou: number | null,
  depthErrorThou?: number,
): Result<Rate> {
  const counted = cuts.filter((cut) => cut.likeForLike)
  if (counted.length === 0) return ok(prior)
  return learnRate(prior, depthThou === null ? counted : cutsLikeDepth(counted, depthThou), depthErrorThou)
}

/**
 * A casting's rate known to this part of itself lets a cut go to size without a stop. With 3 % between heads on top, the
 * deepest cut that the shop lets go unread (20 thou, 3.3 cc at six thou per cc) is then known to √(0.05² + 0.03²)·3.3 =
 * 0.19 cc: the customary tolerance of 0.5 cc is 2.6 of that, and less than one head in two hundred ends under it, which
 * is what one pass may risk. It is also what a traced outline gives [common practice]: a rate that began on less must
 * have been taught as much.
 */
const provenPart = 0.05

/** Whether the shop's own cuts stand behind a casting's rate. */
export const isProven = (rate: Rate): boolean =>
  rate.cuts >= cutsThatProve && rate.uCcPerThou <= provenPart * rate.ccPerThou
