import { learnRate } from '../rate/learn'
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

/**
 * One volume from two estimates of it, in cc: the mean weighed by the inverse of their variances.
 *
 * @param predicted, read with their standard uncertainties, in cc (0–20); where both are certain, what was read counts
 *
 * V = V_p + g·(V_r − V_p), g = u_p²/(u_p² + u_r²); u = u_p·u_r/√(u_p² + u_r²).
 * Example: 61.0 ± 0.3 predicted, 60.6 ± 0.4 read → 60.856 ± 0.24.
 * Derived: the mean of least variance of two independent estimates.
 */
export function weighReading(predicted: KnownCc, read: KnownCc): KnownCc {
  const spread = Math.hypot(predicted.uCc, read.uCc)
  if (spread === 0) return read
  const gain = (predicted.uCc / spread) ** 2
  return { cc: predicted.cc + gain * (read.cc - predicted.cc), uCc: predicted.uCc * (read.uCc / spread) }
}

/**
 * A head's rate after one cut of its own was read: `learnRate` from that cut.
 *
 * @param rate believed before, in cc per thou
 * @param depthThou depth at the chamber's centroid, in thou (0.1–500)
 * @param beforeCc mean of the chambers before, in cc (1–400)
 * @param read mean of the chambers since; its uncertainty carries that of the reading before
 * @param depthErrorThou standard uncertainty of a depth setting, in thou (0–20)
 * @returns the rate as it was when the cut cannot teach one: depth or cc out of range, or no volume taken
 *
 * Example: 0.1667 ± 0.0083, 10 thou took 80.0 to 78.4 ± 0.1414 cc, set to half a thou → 0.1653 ± 0.0074.
 * Derived: as `learnRate`.
 */
export function rateAfterCut(
  rate: Rate,
  depthThou: number,
  beforeCc: number,
  read: KnownCc,
  depthErrorThou: number,
): Rate {
  const cut = { depthThou, beforeCc, uBeforeCc: 0, afterCc: read.cc, uAfterCc: read.uCc, likeForLike: true }
  const learned = learnRate(rate, [cut], depthErrorThou)
  return learned.ok ? learned.value : rate
}
