import type { PlanRecord } from '@/lib/core/cut/plan-record'
import type { CutKind } from '@/lib/core/route/types'

const kindWords: Readonly<Record<CutKind, string>> = {
  none: 'No cut',
  'clean-up': 'Clean-up',
  flat: 'Flat cut to size',
  angle: 'Angle cut',
  'angle-flat': 'Angle cut and flat cut',
}

const thou = (inches: number): string => `${(inches * 1000).toFixed(1)} thou`

/** A plan in one line: what is cut, how much, and what the chamber should hold afterwards. */
export function planLine(plan: PlanRecord): string {
  const angle = plan.angleIn > 0 ? `${thou(plan.angleIn)} at the ${plan.deepEdge} edge by angle` : ''
  const flat = plan.flatIn > 0 ? `${plan.kind === 'clean-up' ? 'stop at ' : ''}${thou(plan.flatIn)} flat` : ''
  const after = plan.predictedFinishedCc === null ? '' : `${plan.predictedFinishedCc.toFixed(1)} cc expected`
  return [kindWords[plan.kind], angle, flat, after].filter(Boolean).join(', ')
}
