import type { CastingFacts } from '@/lib/core/casting/figures'
import type { PlanRecord } from '@/lib/core/cut/plan-record'
import { RefusedError } from '@/lib/core/errors'
import type { ReadingKind } from '@/lib/core/readings/types'
import type { RouteStep } from '@/lib/core/route/types'
import type { StepId, StepKey } from '@/lib/core/route/step-ids'
import { db } from '@/lib/data/db'
import { effectiveReadings, type EffectiveReading } from '@/lib/core/readings/effective'
import { planRecordOf } from '@/lib/data/facts'
import { castingFactsOf } from '@/lib/data/known-figures'
import { routeStepOf } from '@/lib/data/visits'

/** The part of a visit's record that an answer can depend on; the route is its projection. */
const include = {
  head: { include: { casting: { include: { figures: true, outlines: true } }, tags: true } },
  pair: { include: { plans: { orderBy: { number: 'desc' }, take: 1 } } },
  events: { orderBy: { seq: 'asc' } },
  readings: { include: { points: true }, orderBy: { eventSeq: 'asc' } },
  outside: true,
  steps: { orderBy: { place: 'asc' } },
} as const

const recordOf = async (visitId: string) => (await db()).visit.findUnique({ where: { id: visitId }, include })

/** What a driver knows of a head when it answers for a gauge. */
export type Found = {
  readonly visit: NonNullable<Awaited<ReturnType<typeof recordOf>>>
  readonly route: readonly RouteStep[]
  readonly tag: string
  readonly casting: CastingFacts
  readonly chambers: number
  readonly plan: PlanRecord | null
  readonly read: readonly EffectiveReading[]
}

export async function findVisit(visitId: string): Promise<Found> {
  const visit = await recordOf(visitId)
  if (!visit) throw new RefusedError({ code: 'not-found', message: 'Head not found.' })
  const [plan] = visit.pair.plans
  return {
    visit,
    route: visit.steps.map(routeStepOf),
    tag: visit.head.tags.find((tag) => tag.to === null)?.number ?? '',
    casting: castingFactsOf(visit.head.casting, visit.head.chamberForm),
    chambers: visit.head.casting?.chamberCount ?? 4,
    plan: plan ? planRecordOf(plan) : null,
    read: effectiveReadings(visit.readings),
  }
}

/** The newest figure of this kind read at a step. */
export const figureAt = ({ read }: Found, stepId: StepId, kind: ReadingKind, point: string): number | null =>
  read.findLast((reading) => reading.step.stepId === stepId && reading.kind === kind && reading.point === point)
    ?.value ?? null

/** Where and what is asked. */
export type Asked = {
  readonly step: StepKey
  readonly kind: ReadingKind
  readonly point: string
}
