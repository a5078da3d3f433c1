import type { PlanRecord } from '@/lib/core/cut/plan-record'
import type { RouteRules } from '@/lib/core/route/rules'
import type { CutKind } from '@/lib/core/route/step-ids'
import { formatFigure, formatThou } from '@/lib/core/units/format-figure'
import type { Dossier } from '@/lib/dossier/dossier'
import { cutCautionText } from '@/lib/words/cut-cautions'

export type JobPair = {
  readonly id: string
  readonly casting: string
  /** Null: not on record. */
  readonly castingId: string | null
  readonly visitIds: readonly string[]
  /** Of the day its heads were booked: what work can be ordered, and how it is called. */
  readonly rules: RouteRules
  readonly plan: {
    readonly number: number
    readonly line: string
    readonly cautions: readonly string[]
    /** Who said yes to this version; null: nobody yet. */
    readonly acceptedBy: string | null
  } | null
}

/** The pairs of a job in the order of their making. */
export function pairViews(heads: readonly Dossier[]): JobPair[] {
  const ids = [...new Set(heads.map(({ visit }) => visit.pairId))].sort()
  return ids.map((id) =>
    pairView(
      id,
      heads.filter(({ visit }) => visit.pairId === id),
    ),
  )
}

function pairView(id: string, own: readonly Dossier[]): JobPair {
  const [first] = own as readonly [Dossier]
  const [plan] = first.visit.pair.plans
  return {
    id,
    castingId: first.visit.head.castingId,
    casting: first.visit.head.casting?.name ?? 'casting not on record',
    visitIds: own.map(({ visit }) => visit.id),
    rules: first.settings.rules,
    plan:
      plan && first.plan
        ? {
            number: plan.number,
            line: planLine(first.plan),
            cautions: first.plan.cautions.map(cutCautionText),
            acceptedBy: plan.acceptances[0]?.by ?? null,
          }
        : null,
  }
}

const kindWords: Readonly<Record<CutKind, string>> = {
  none: 'No cut',
  'clean-up': 'Clean-up',
  flat: 'Flat cut to size',
  angle: 'Angle cut',
  'angle-flat': 'Angle cut and flat cut',
}

/** A plan in one line: what is cut, how much, and what the chamber should hold afterwards. */
function planLine(plan: PlanRecord): string {
  const angle = plan.angleIn > 0 ? `${formatThou(plan.angleIn)} at the ${plan.deepEdge} edge by angle` : ''
  const flat = plan.flatIn > 0 ? `${plan.kind === 'clean-up' ? 'stop at ' : ''}${formatThou(plan.flatIn)} flat` : ''
  const after =
    plan.predictedFinishedCc === null ? '' : `${formatFigure(plan.predictedFinishedCc, 'chamberVolume')} expected`
  return [kindWords[plan.kind], angle, flat, after].filter(Boolean).join(', ')
}
