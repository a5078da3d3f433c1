import type { PlanRecord } from '../cut/plan-record'
import { chamberChanges } from '../chamber/changes'
import { isMillPoint } from '../chamber/mill-point'
import type { Rate } from '../rate/rate'
import { shopCutOf, type CutFacts } from '../rate/shop-cut'
import { depthAtCentroidIn } from '../rate/shop-cuts'
import { confirmedCut } from '../route/outside-cuts'
import { ccBeforeCut, ccOf, type ChambersCc } from './cc-at'
import { headEstimate, type CcWithRate, type HeadEstimate } from './head-estimate'
import type { HeadRead } from './further-readings'
import { touchOffDepth } from './touch-off'

export { stopChamber } from '../chamber/mill-point'

export type MillFacts = {
  /** The head as measured and cut so far. */
  readonly cuts: CutFacts
  readonly plan: Pick<PlanRecord, 'depthAtCentroidIn' | 'flatIn'>
  /** Where the opening's centre lies between the edges, 0–1; null: not known. */
  readonly centroidShare: number | null
  /** Of this head before its own cuts (`rateForHead`). */
  readonly rate: Rate
  /** Standard uncertainty of a depth setting, in thou. */
  readonly depthErrorThou: number
}

export type StateAtMill = {
  /** Mean of the chambers now, with how it goes together with the rate. */
  readonly mean: CcWithRate
  /** The chamber that holds least now. */
  readonly smallest: CcWithRate & { readonly chamber: string }
  /** Flat depth cut at this mill so far, from the touch-off that counts now. */
  readonly depthThou: number
  /** Depth at the chamber's centroid of all that was cut. */
  readonly wholeThou: number
  /** With what this head's own cut taught. */
  readonly rate: Rate
  /** Where the mean comes from: the burette before any cut, the depth alone, or a chamber read since the cut. */
  readonly from: 'measured' | 'depth' | 'read-since-cut'
  /** What it was worked out from: for what further readings would do. */
  readonly read: HeadRead
}

/**
 * What a head holds at the mill, in cc: what it held before, less what the cuts took by the rate. Where a chamber was
 * read since, that reading and the prediction are weighed by how well each is known, and the cut teaches the rate.
 *
 * @param facts depths 0–500 thou, cc 1–400
 * @returns null when no chamber was measured before the cut
 *
 * Example: two chambers of 64.0, each read once to 0.3; 10 thou at 0.16 ± 0.01 cc per thou, set to half a thou: 62.4 ±
 * 0.248. Chamber 1 then reads 62.8: its loss of 1.2 ± 0.424 against 1.6 ± 0.128 gives the rate 0.1580.
 * Derived: as `headEstimate`, with the chambers as `ccBeforeCut` and `ccOf` give them.
 */
export function stateAtMill(facts: MillFacts): StateAtMill | null {
  const { cuts, depthErrorThou, rate } = facts
  const before = ccBeforeCut(cuts.readings, cuts.burette, chamberChanges(cuts))
  const depth = touchOffDepth(cuts.readings)
  const wholeThou = cutSoFarThou(facts, depth.totalIn * 1000)
  const since = wholeThou > 0 ? ccSinceCut(cuts, depth.seq) : null
  const read: HeadRead = {
    chambers: [...before.chambers].map(([chamber, mean]) => ({
      chamber,
      before: mean,
      since: since?.chambers.get(chamber) ?? null,
    })),
    depthThou: wholeThou,
    uDepthThou: depthErrorThou,
    rate,
  }
  const estimate = headEstimate(read)
  const smallest = estimate && smallestOf(estimate)
  if (!estimate || !smallest) return null
  const wasRead = read.chambers.some((chamber) => chamber.since !== null)
  return {
    mean: estimate.mean,
    smallest,
    depthThou: depth.fromTouchOffIn * 1000,
    wholeThou,
    rate: estimate.rate,
    from: wholeThou > 0 ? (wasRead ? 'read-since-cut' : 'depth') : 'measured',
    read,
  }
}

/**
 * The chamber that holds least, in cc. Example: 60.2 and 59.8 → the second. Derived: the least of them; null without any.
 */
export const smallestOf = ({ chambers }: HeadEstimate): HeadEstimate['chambers'][number] | null =>
  chambers.reduce<HeadEstimate['chambers'][number] | null>(
    (least, one) => (least && least.cc <= one.cc ? least : one),
    null,
  )

/** cc read at the mill since the last depth, at size before those at the stop; before any depth here, the arrival check's. */
function ccSinceCut(cuts: CutFacts, depthSeq: number | null): ChambersCc {
  const cc = cuts.readings.filter(({ kind }) => kind === 'cc')
  const mill = cc.filter(({ step, seq }) => step.stepId === 'flat-cut' && seq >= (depthSeq ?? lastVendor(cuts)))
  const size = mill.filter(({ point }) => isMillPoint(point, 'at-size'))
  const arrival = depthSeq === null ? cc.filter(({ step }) => step.stepId === 'arrival-figures') : []
  const changes = chamberChanges(cuts)
  return ccOf(size.length > 0 ? size : [...arrival, ...mill], cuts.burette, changes)
}

const lastVendor = ({ orders }: CutFacts): number =>
  Math.max(0, ...orders.filter(confirmedCut).map(({ receivedSeq }) => receivedSeq ?? 0))

/**
 * Depth at the chamber's centroid of all that was cut so far, in thou: as measured; where a vendor's cut was not
 * measured, the angle part of the plan, the flat part that the order confirmed, and what was cut here.
 *
 * @param depthThou flat depth cut here, over every touch-off, in thou (0–500)
 *
 * Example: nothing measured, plan 0.060 in at the centroid of which 0.020 flat, 5 thou cut here → 40 + 5 = 45 thou.
 * Derived: depth at the centroid is flat part plus angle part there.
 */
export function cutSoFarThou(
  { cuts, plan, centroidShare }: Pick<MillFacts, 'cuts' | 'plan' | 'centroidShare'>,
  depthThou: number,
): number {
  const edges = shopCutOf(cuts)?.edges
  const measuredIn = edges ? depthAtCentroidIn(edges, centroidShare) : null
  if (measuredIn !== null) return measuredIn * 1000
  const outsideIn = cuts.orders.reduce((sum, order) => sum + (confirmedCut(order) ? order.flatIn : 0), 0)
  return (plan.depthAtCentroidIn - plan.flatIn + outsideIn) * 1000 + depthThou
}
