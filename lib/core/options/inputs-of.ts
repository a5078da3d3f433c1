import type { CutLimits } from '../cut/plan-types'
import { quantities } from '../units/quantities'
import type { BenchQuestion, Start } from './bench-types'
import type { PlanInputs } from './plan-record-of'

/** What a cut of this starting head is worked out from. */
export function inputsOf(question: BenchQuestion, start: Start): PlanInputs {
  const { shop } = question
  return {
    heads: start.heads,
    casting: start.casting,
    engine: question.engine,
    deepEdge: start.deepEdge,
    presentNominal: start.presentNominal,
    targetCc: question.targetCc,
    toleranceCc: shop.settings.ccToleranceCc,
    marginCc: shop.marginCc,
    thouPerCc: start.thouPerCc,
    rateProven: start.rateProven,
    rateWords: start.rateWords,
    limits: limitsOf(question, start),
    flatDeck: start.flatDeck ? { wantedThicknessIn: question.thicknessIn ?? null } : null,
    ptvLeastIn: shop.ptvLeastIn,
    sealingMarginIn: shop.settings.sealingMarginIn,
  }
}

function limitsOf({ shop, classFlatOnly, classMinCc, classMaxCutIn }: BenchQuestion, start: Start): CutLimits {
  const { casting } = start
  return {
    angleCautionDeg: shop.angleCautionDeg,
    angleLimitDeg: casting.largestAngleDeg ?? shop.angleLimitDeg,
    thicknessNewIn: casting.thicknessNewIn ?? null,
    thicknessLeastIn: casting.thicknessLeastIn ?? null,
    land: landOf(casting),
    classFlatOnly,
    classMinCc,
    classMaxCutIn,
  }
}

/**
 * Land under the intake port as the record has it, its place as a share of the milled width; null: not on record.
 * By definition: the record's figures. Example: 0.460 new, 0.340 at least, 0.30 from the edge of 6.000 → share 0.05.
 */
export function landOf({ landNewIn, landLeastIn, landXIn, milledWidthIn }: Start['casting']): CutLimits['land'] {
  if (landNewIn === undefined || landLeastIn === undefined) return null
  const known = landXIn !== undefined && milledWidthIn !== undefined && milledWidthIn >= quantities.milledWidth.least
  const share = known ? landXIn / milledWidthIn : null
  return { newIn: landNewIn, leastIn: landLeastIn, atShare: share }
}
