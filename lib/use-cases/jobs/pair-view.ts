import type { PlanRecord } from '@/lib/core/cut/plan-record'
import { noRules, type RouteRules } from '@/lib/core/route/rules'
import type { CutKind } from '@/lib/core/route/step-ids'
import { formatFigure, formatThou } from '@/lib/core/units/format-figure'
import { planRecordOf } from '@/lib/data/facts'
import type { JobRecord } from '@/lib/data/jobs'
import type { SettingsOf } from '@/lib/data/settings'

export type JobPair = {
  readonly id: string
  readonly casting: string
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

export function pairView(
  pair: JobRecord['pairs'][number],
  visits: JobRecord['visits'],
  settingsOf: SettingsOf,
): JobPair {
  const own = visits.filter((visit) => visit.pairId === pair.id)
  const [plan] = pair.plans
  const record = plan ? planRecordOf(plan) : null
  return {
    id: pair.id,
    casting: own[0]?.head.casting?.name ?? 'casting not on record',
    visitIds: own.map((visit) => visit.id),
    rules: own[0] ? settingsOf(own[0]).rules : noRules,
    plan:
      plan && record
        ? {
            number: plan.number,
            line: planLine(record),
            cautions: record.cautions,
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
