import { planRecordOf } from '@/lib/data/facts'
import type { JobRecord } from '@/lib/data/jobs'
import { planLine } from './plan-line'

export type JobPair = {
  readonly id: string
  readonly casting: string
  readonly visitIds: readonly string[]
  readonly plan: {
    readonly number: number
    readonly line: string
    readonly cautions: readonly string[]
    /** Who said yes to this version; null: nobody yet. */
    readonly acceptedBy: string | null
  } | null
}

export function pairView(pair: JobRecord['pairs'][number], visits: JobRecord['visits']): JobPair {
  const own = visits.filter((visit) => visit.pairId === pair.id)
  const [plan] = pair.plans
  const record = plan ? planRecordOf(plan) : null
  return {
    id: pair.id,
    casting: own[0]?.head.casting?.name ?? 'casting not on record',
    visitIds: own.map((visit) => visit.id),
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
