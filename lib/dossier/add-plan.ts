import type { Result } from '@/lib/core/errors'
import { must, ok } from '@/lib/core/errors'
import { planRecordOf, type PlanChoiceFigures } from '@/lib/core/options/plan-record-of'
import { newId } from '@/lib/data/ids'
import { planInputs, planResults } from '@/lib/data/stored/plan'
import { addEvent, bumpVisit } from '@/lib/data/visits'
import type { Write } from '@/lib/data/write'
import type { Dossier } from './dossier'
import { planContext } from './plan-context'
import { refuseReleased } from './refuse-closed'

type Figure = { readonly value: number; readonly text: string; readonly unit: string } | null

/** A choice of cut with its figures as they were typed. */
export type TypedPlanChoice = Pick<PlanChoiceFigures, 'kind' | 'splitBy'> & {
  readonly pairId: string
  readonly reason: string
} & Readonly<Record<'flatIn' | 'angleIn' | 'angleDeg' | 'stopAtIn' | 'sinkIn' | 'thicknessIn', Figure>>

type Heads = readonly [Dossier, ...Dossier[]]
export type NewPlan = { readonly planId: string; readonly number: number }

/**
 * Adds a version to the plan of these heads, frozen with its inputs, with its event on each head. The routes are the
 * caller's to refresh. What the figures do not allow comes back as a refusal, before anything is written.
 */
export async function addPlan(ctx: Write, heads: Heads, choice: TypedPlanChoice): Promise<Result<NewPlan>> {
  const [{ visit: first }] = heads
  const context = await planContext(ctx.tx, heads)
  const worked = planRecordOf(context, choiceFigures(choice))
  if (!worked.ok) return worked
  // Frozen with the plan: what later cuts teach must not change what this route owes.
  const record = { ...worked.value, rateProven: context.rate.proven }
  const number = (first.pair.plans[0]?.number ?? 0) + 1
  const planId = newId(ctx.now)
  await ctx.tx.planVersion.create({
    data: {
      id: planId,
      pairId: choice.pairId,
      number,
      kind: record.kind,
      inputs: planInputs.write({ choice, context }),
      results: planResults.write(record),
      reason: choice.reason,
      settingsVersion: first.rulesVersion,
      createdAt: ctx.now,
      byId: ctx.actor.personId,
    },
  })
  for (const { visit } of heads) {
    refuseReleased(visit)
    await bumpVisit(ctx.tx, visit)
    await addEvent(ctx, visit.id, 'plan', null, { note: choice.reason })
  }
  ctx.audit({
    action: 'pair.plan',
    subjectId: choice.pairId,
    jobId: first.jobId,
    changes: { number, kind: record.kind, flatIn: record.flatIn, angleIn: record.angleIn, reason: choice.reason },
  })
  return ok({ planId, number })
}

/** The same where nothing may stand in its way. */
export const mustAddPlan = async (ctx: Write, heads: Heads, choice: TypedPlanChoice): Promise<NewPlan> =>
  must(await addPlan(ctx, heads, choice))

/** The typed figures of a choice as the core takes them. */
const choiceFigures = (choice: TypedPlanChoice): PlanChoiceFigures => ({
  kind: choice.kind,
  splitBy: choice.splitBy,
  flatIn: choice.flatIn?.value ?? null,
  angleIn: choice.angleIn?.value ?? null,
  angleDeg: choice.angleDeg?.value ?? null,
  stopAtIn: choice.stopAtIn?.value ?? null,
  sinkIn: choice.sinkIn?.value ?? null,
  thicknessIn: choice.thicknessIn?.value ?? null,
})
