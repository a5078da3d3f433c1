import type { PlanRecord } from '@/lib/core/cut/plan-record'
import type { CutKind } from '@/lib/core/route/step-ids'
import { formatFigure, formatThou } from '@/lib/core/units/format-figure'

const kindWords: Readonly<Record<CutKind, string>> = {
  none: 'No cut',
  'clean-up': 'Clean-up',
  flat: 'Flat cut to size',
  angle: 'Angle cut',
  'angle-flat': 'Angle cut and flat cut',
}

/** A plan in one line: what is cut, how much, and what the chamber should hold afterwards. */
export function planLine(plan: PlanRecord): string {
  const angle = plan.angleIn > 0 ? `${formatThou(plan.angleIn)} at the ${plan.deepEdge} edge by angle` : ''
  const flat = plan.flatIn > 0 ? `${plan.kind === 'clean-up' ? 'stop at ' : ''}${formatThou(plan.flatIn)} flat` : ''
  const after =
    plan.predictedFinishedCc === null ? '' : `${formatFigure(plan.predictedFinishedCc, 'chamberVolume')} expected`
  return [kindWords[plan.kind], angle, flat, after].filter(Boolean).join(', ')
}
