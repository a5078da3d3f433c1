import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { planRecordOf, type PlanChoiceFigures } from '@/lib/core/options/plan-record-of'
import { newId } from '@/lib/data/ids'
import { planInputs, planResults } from '@/lib/data/stored/plan'
import { nameOf } from '@/lib/data/people'
import { addEvent, bumpVisit } from '@/lib/data/visits'
import { refreshPair } from '@/lib/dossier/refresh'
import { write, type Moment } from '@/lib/data/write'
import type { PlanChoice } from '@/lib/schemas/plan'
import { refuseReleased } from '@/lib/dossier/refuse-closed'
import { headsOfPair, planContext } from '@/lib/dossier/plan-context'

/** Keeps a new version of a pair's cut plan, frozen with its inputs; the route of every head of the pair follows at once. */
export async function makePlanVersion(actor: Actor, input: PlanChoice, moment: Moment) {
  must(allow(actor, 'plan.make'))
  return write(actor, moment, async (ctx) => {
    const heads = await headsOfPair(ctx.tx, input.pairId)
    const visits = heads.map(({ visit }) => visit)
    const { visit: first } = heads[0]
    const [latest] = first.pair.plans
    const newest = latest?.number ?? 0
    if (newest !== input.seenVersion) {
      const who = latest ? await nameOf(ctx.tx, latest.byId) : ''
      throw new RefusedError({
        code: 'conflict',
        message: `Version ${newest} of this plan was made while you were working. Check it before you save.`,
        theirs: { who, verb: 'plan', at: latest?.createdAt.toISOString() ?? '' },
      })
    }
    if (newest > 0 && input.reason === '') {
      const message = 'Enter the reason for the change.'
      throw new RefusedError({ code: 'invalid', message, fields: { reason: message } })
    }
    const context = await planContext(ctx.tx, heads)
    const worked = must(planRecordOf(context, choiceFigures(input)))
    // Frozen with the plan: what later cuts teach must not change what this route owes.
    const record = { ...worked, rateProven: context.rate.proven }
    const id = newId(ctx.now)
    await ctx.tx.planVersion.create({
      data: {
        id,
        pairId: input.pairId,
        number: newest + 1,
        kind: record.kind,
        inputs: planInputs.write({ choice: input, context }),
        results: planResults.write(record),
        reason: input.reason,
        settingsVersion: first.rulesVersion,
        createdAt: ctx.now,
        byId: actor.personId,
      },
    })
    for (const visit of visits) {
      refuseReleased(visit)
      await bumpVisit(ctx.tx, visit)
      await addEvent(ctx, visit.id, 'plan', null, { note: input.reason })
    }
    ctx.audit({
      action: 'pair.plan',
      subjectId: input.pairId,
      jobId: first.jobId,
      changes: {
        number: newest + 1,
        kind: record.kind,
        flatIn: record.flatIn,
        angleIn: record.angleIn,
        reason: input.reason,
      },
    })
    await refreshPair(ctx.tx, input.pairId, ctx.now)
    return { planId: id, number: newest + 1 }
  })
}

/** The typed figures of a choice as the core takes them. */
const choiceFigures = (choice: PlanChoice): PlanChoiceFigures => ({
  kind: choice.kind,
  splitBy: choice.splitBy,
  flatIn: choice.flatIn?.value ?? null,
  angleIn: choice.angleIn?.value ?? null,
  angleDeg: choice.angleDeg?.value ?? null,
  stopAtIn: choice.stopAtIn?.value ?? null,
  sinkIn: choice.sinkIn?.value ?? null,
  thicknessIn: choice.thicknessIn?.value ?? null,
})
