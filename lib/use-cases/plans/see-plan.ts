import { allow, can } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import type { PlanRecord } from '@/lib/core/cut/plan-record'
import { must } from '@/lib/core/errors'
import { db } from '@/lib/data/db'
import { planRecordOf } from '@/lib/data/facts'
import { namesOf } from '@/lib/data/people'
import { whereNeeded, type WhereNeeded } from './where-needed'
import { headsOfPair, planContext, type PlanContext } from '@/lib/dossier/plan-context'

export type { PlanContext } from '@/lib/dossier/plan-context'

export type PlanVersionView = {
  readonly id: string
  readonly number: number
  readonly record: PlanRecord
  readonly reason: string
  readonly at: Date
  readonly by: string
  readonly accepted: string
}

export type PlanView = {
  readonly context: PlanContext
  readonly versions: readonly PlanVersionView[]
  readonly closed: boolean
  readonly mayAccept: boolean
  readonly whereNeeded: WhereNeeded
}

/** A pair's plan: what it is computed from, and every version with who made it and why. */
export async function seePlan(actor: Actor, pairId: string): Promise<PlanView> {
  must(allow(actor, 'job.see'))
  const client = await db()
  const heads = await headsOfPair(client, pairId)
  const visits = heads.map(({ visit }) => visit)
  const { plans } = heads[0].visit.pair
  const names = await namesOf(plans.map((plan) => plan.byId))
  return {
    context: await planContext(client, heads),
    versions: plans.map((plan) => ({
      id: plan.id,
      number: plan.number,
      record: planRecordOf(plan),
      reason: plan.reason,
      at: plan.createdAt,
      by: names.get(plan.byId) ?? '',
      accepted: plan.acceptances.map((yes) => `${yes.by}, ${yes.how}`).join('; '),
    })),
    closed: visits.some((visit) => visit.releases.length > 0),
    mayAccept: can(actor, 'plan.accept'),
    whereNeeded: whereNeeded(visits),
  }
}
