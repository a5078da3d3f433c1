import type { Rate } from '../rate/rate'
import type { KnownCc } from '../rate/shop-cut'

/**
 * What a cut should leave of a volume, in cc: V − k·d.
 *
 * @param from volume before, and its standard uncertainty, in cc
 * @param depthThou depth at the chamber's centroid, in thou (0–500); 0: nothing was cut, nothing changes
 * @param depthErrorThou standard uncertainty of a depth setting, in thou (0–20)
 *
 * u² = u_V² + (d·u_k)² + (k·u_d)². Example: 63.0 ± 0.1 cc, 10 thou at 0.16 ± 0.01 cc per thou, set to half a thou →
 * 61.4 ± 0.162 cc.
 * Derived: independent uncertainties add in squares.
 */
export const ccAfterCut = (from: KnownCc, depthThou: number, rate: Rate, depthErrorThou: number): KnownCc => ({
  cc: from.cc - depthThou * rate.ccPerThou,
  uCc: Math.hypot(from.uCc, depthThou * rate.uCcPerThou, depthThou > 0 ? depthErrorThou * rate.ccPerThou : 0),
})
