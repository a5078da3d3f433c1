import type { HeadCc } from '../chamber/burette'
import type { PlanRecord } from '../cut/plan-record'
import type { Rate } from '../rate/rate'
import { shopCutOf, type CutFacts, type KnownCc } from '../rate/shop-cut'
import { depthAtCentroidIn } from '../rate/shop-cuts'
import { confirmedCut } from '../route/outside-cuts'
import { ccBeforeCut, ccOf, type ChambersCc } from './cc-at'
import { ccAfterCut, rateAfterCut, weighReading } from './known-cc'

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
  /** Mean of the chambers now, and its standard uncertainty. */
  readonly meanCc: number
  readonly uCc: number
  readonly smallestCc: number
  readonly uSmallestCc: number
  /** Flat depth cut at this mill so far, from touch-off. */
  readonly depthThou: number
  /** With what this head's own cut taught. */
  readonly rate: Rate
  /** Where the mean comes from: the burette before any cut, the depth alone, or a chamber read since the cut. */
  readonly from: 'measured' | 'depth' | 'read-since-cut'
}

/** The chamber that is read at the stop, and on arrival. */
export const stopChamber = '1'

/**
 * What a head holds at the mill, in cc: what it held before, less what the cuts took by the rate. Where a chamber was
 * read since, that reading and the prediction are weighed by how well each is known, and the cut teaches the rate.
 *
 * @param facts depths 0–500 thou, cc 1–400
 * @returns null when no chamber was measured before the cut
 *
 * `ccAfterCut`, then `weighReading` and `rateAfterCut`. Every chamber is taken to lose alike: chamber 1 stands for the
 * mean, and the smallest loses what the mean lost.
 * Example: two chambers of 64.0, each read to 0.3; 10 thou at 0.16 ± 0.01 cc per thou, set to half a thou: 62.4 ± 0.248
 * predicted. Chamber 1 then reads 62.8, so 62.8 ± 0.424 by the burette: 62.50 ± 0.214, and the rate 0.1580 ± 0.0097.
 * Derived: as the functions it is made of.
 */
export function stateAtMill(facts: MillFacts): StateAtMill | null {
  const { cuts, depthErrorThou } = facts
  const before = ccBeforeCut(cuts.readings, cuts.burette)
  if (!before.head) return null
  const start = before.head
  const depth = lastDepth(cuts)
  const depthThou = (depth?.value ?? 0) * 1000
  const wholeThou = cutSoFarThou(facts, depthThou)
  const predicted = ccAfterCut({ cc: start.meanCc, uCc: start.uCc }, wholeThou, facts.rate, depthErrorThou)
  const read = readSince(before, start, ccOf(readAtMill(cuts, depth?.seq ?? null), cuts.burette))
  const now = read === null ? predicted : weighReading(predicted, read)
  return {
    meanCc: now.cc,
    uCc: now.uCc,
    smallestCc: start.smallestCc - (start.meanCc - now.cc),
    uSmallestCc: start.uSmallestCc,
    depthThou,
    rate:
      read === null || wholeThou === 0
        ? facts.rate
        : rateAfterCut(facts.rate, wholeThou, start.meanCc, read, depthErrorThou),
    from: wholeThou === 0 ? 'measured' : read === null ? 'depth' : 'read-since-cut',
  }
}

type Reading = CutFacts['readings'][number]

const lastDepth = ({ readings }: CutFacts): Reading | undefined =>
  readings.findLast(({ kind, step, value }) => kind === 'cut-depth' && step.stepId === 'flat-cut' && value !== null)

/** cc read at the stop since the last depth; before any depth here, those of the arrival check. */
function readAtMill({ readings }: CutFacts, depthSeq: number | null): readonly Reading[] {
  const cc = readings.filter(({ kind }) => kind === 'cc')
  return depthSeq === null
    ? cc.filter(({ step }) => step.stepId === 'arrival-figures')
    : cc.filter(({ step, seq }) => step.stepId === 'flat-cut' && seq >= depthSeq)
}

/**
 * Depth at the chamber's centroid of all that was cut so far, in thou: as measured; where a vendor's cut was not
 * measured, the angle part of the plan, the flat part that the order confirmed, and what was cut here.
 *
 * @param depthThou flat depth cut here, from touch-off, in thou (0–500)
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

/** The mean of the chambers by what chamber 1 lost; null: it was not read before and since. */
function readSince(before: ChambersCc, start: HeadCc, now: ChambersCc): KnownCc | null {
  const was = before.chambers.get(stopChamber)
  const after = now.chambers.get('at-size') ?? now.chambers.get('at-stop') ?? now.chambers.get(stopChamber)
  if (!was || !after) return null
  return { cc: start.meanCc - (was.meanCc - after.meanCc), uCc: Math.hypot(was.uCc, after.uCc) }
}
