import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { nameOf } from '@/lib/data/people'
import { write, type Moment } from '@/lib/data/write'
import { mustAddPlan } from '@/lib/dossier/add-plan'
import { headsOfPair } from '@/lib/dossier/plan-context'
import { refreshPair } from '@/lib/dossier/refresh'
import type { PlanChoice } from '@/lib/schemas/plan'

/** Keeps a new version of a pair's cut plan, frozen with its inputs; the route of every head of the pair follows at once. */
export async function makePlanVersion(actor: Actor, input: PlanChoice, moment: Moment) {
  must(allow(actor, 'plan.make'))
  return write(actor, moment, async (ctx) => {
    const heads = await headsOfPair(ctx.tx, input.pairId)
    const [latest] = heads[0].visit.pair.plans
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
    const plan = await mustAddPlan(ctx, heads, input)
    await refreshPair(ctx.tx, input.pairId, ctx.now)
    return plan
  })
}
