import type { CutLimits } from '../cut/plan-types'
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
    rateWords: start.rateWords,
    limits: limitsOf(question, start),
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
    land: landOf(casting, start.deepEdge),
    classFlatOnly,
    classMinCc,
    classMaxCutIn,
  }
}

/** The land lies at the intake edge, which is the shallow one unless the record says that cuts are deep there. */
export function landOf({ landNewIn, landLeastIn }: Start['casting'], deepEdge: Start['deepEdge']): CutLimits['land'] {
  if (landNewIn === undefined || landLeastIn === undefined) return null
  return { newIn: landNewIn, leastIn: landLeastIn, at: deepEdge === 'intake' ? 'deep' : 'shallow' }
}
