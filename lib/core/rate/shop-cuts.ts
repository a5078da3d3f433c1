import type { RateCut } from './learn'
import { cutsThatProve, type Rate } from './rate'
import type { DepthBy, ShopCut } from './shop-cut'
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
 * @param depthErrorThou standard uncertainty of a depth setting, in thou (0–20, default 0.5)
 * @returns depth at the centroid in thou; `likeForLike` is false, and `whyNot` says why, when it must not be counted
 *
 * Example: 20 thou at one edge, 83 at the other, share 0.635 → 60.0 thou.
 * Derived: cc taken over depth at the centroid.
 */
export function taughtBy(
  { edges, depthBy, before, after, whyNot }: Pick<ShopCut, 'edges' | 'depthBy' | 'before' | 'after' | 'whyNot'>,
  centroidShare: number | null,
  depthErrorThou = 0.5,
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
      uDepthThou: uDepthThou(depthBy, depthErrorThou),
    },
    whyNot: said,
  }
}

/** Of a depth that four corners say. */
const cornersErrorThou = 0.5

/**
 * Standard uncertainty of a cut's depth, in thou: 0.5 by corners, that of a setting from touch-off, both where a vendor's
 * part is known by corners and ours from touch-off. Example: both, half a thou each → 0.707.
 * Derived: independent uncertainties add in squares.
 */
export function uDepthThou(by: DepthBy, depthErrorThou: number): number {
  if (by === 'corners') return cornersErrorThou
  return by === 'both' ? Math.hypot(cornersErrorThou, depthErrorThou) : depthErrorThou
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
