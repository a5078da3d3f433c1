import type { CastingFacts } from '@/lib/core/casting/figures'
import type { PlanRecord } from '@/lib/core/cut/plan-record'
import { tagOf } from '@/lib/use-cases/stations/see-step'
import type { ReadingKind } from '@/lib/core/readings/types'
import type { StepId, StepKey } from '@/lib/core/route/types'
import { effectiveReadings, planRecordOf, type EffectiveReading } from '@/lib/data/facts'
import { castingFactsOf } from '@/lib/data/known-figures'
import type { VisitWithRoute } from '@/lib/data/visits'

/** What a driver knows of a head when it answers for a gauge. */
export type Found = VisitWithRoute & {
  readonly tag: string
  readonly casting: CastingFacts
  readonly chambers: number
  readonly plan: PlanRecord | null
  readonly read: readonly EffectiveReading[]
}

export function foundOf(record: VisitWithRoute): Found {
  const { visit, facts } = record
  const plan = visit.pair.plans[0]
  return {
    ...record,
    tag: tagOf(visit),
    casting: castingFactsOf(visit.head.casting, visit.head.chamberForm),
    chambers: facts.chambers,
    plan: plan ? planRecordOf(plan) : null,
    read: effectiveReadings(visit.readings),
  }
}

/** The newest figure of this kind read at a step. */
export const figureAt = ({ read }: Found, stepId: StepId, kind: ReadingKind, point: string): number | null =>
  read.findLast(
    (reading) => reading.step.stepId === stepId && reading.kind === kind && reading.point === point,
  )?.value ?? null

/** Where and what is asked. */
export type Asked = {
  readonly step: StepKey
  readonly kind: ReadingKind
  readonly point: string
}
