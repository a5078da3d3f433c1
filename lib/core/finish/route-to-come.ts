import { computeRoute } from '../route/compute-route'
import { nothingYet } from '../route/nothing-yet'
import { defaultRouteSettings } from '../route/settings'
import type { WorkId } from '../route/step-ids'
import type { PlanFacts, RouteFacts, RouteStep } from '../route/types'
import type { RouteRules } from '../route/rules'

/** A head that is only asked about, as a booking has it. */
export type HeadToCome = {
  readonly source: RouteFacts['source']
  readonly used: boolean
  readonly cameAssembled: boolean
  readonly overheated: boolean
  readonly ordered: readonly WorkId[]
}

/** A cut as is common, so that what follows a cut is counted: 20 thou flat, 60 thou at an edge [common practice]. */
function usualCut(ordered: readonly WorkId[]): PlanFacts | null {
  const [isFlat, isAngle] = [ordered.includes('flat-cut'), ordered.includes('angle-cut')]
  if (!isFlat && !isAngle) return null
  const flatIn = isFlat ? 0.02 : 0
  const angleIn = isAngle ? 0.06 : 0
  return {
    kind: isAngle ? (isFlat ? 'angle-flat' : 'angle') : 'flat',
    ...{ flatIn, angleIn, angleDeg: isAngle ? 0.5 : 0, deepestIn: flatIn + angleIn },
    ...{ totalRemovedIn: null, intakeSideIn: null, ptvLossIn: null },
  }
}

/**
 * The steps that a head would go through until it is ready, in working order, before anything of it is known but the work.
 *
 * Example: a flat cut ordered → check in, wash, …, flat cut, deburr, …, final inspection. By definition: the route's tables.
 */
export const routeToCome = ({ ordered, ...head }: HeadToCome, rules: RouteRules): RouteStep[] =>
  computeRoute({
    ...head,
    ...nothingYet,
    ...{ ordered, chambers: 4, plan: usualCut(ordered), previousPlan: null, targetCc: null, classMinCc: null },
    ...{ hasEngineData: false, camInHead: null, manifoldSpansHeads: null, remainingPtvIn: null, finishAsked: false },
    settings: { ...defaultRouteSettings, rules },
  }).filter(({ stepId, state }) => stepId !== 'hand-over' && state !== 'not needed')
