import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { newId } from '@/lib/data/ids'
import { isOutdated, planById } from '@/lib/data/plans'
import { write, type Moment } from '@/lib/data/write'
import type { acceptPlanSchema } from '@/lib/schemas/plan'

/** The customer's yes to one version of a plan: who, how, when. Only the newest version can be accepted. */
export async function acceptPlan(actor: Actor, input: z.output<typeof acceptPlanSchema>, moment: Moment) {
  must(allow(actor, 'plan.accept'))
  return write(actor, moment, async (ctx) => {
    const plan = await planById(ctx.tx, input.planId)
    if (await isOutdated(ctx.tx, plan)) {
      throw new RefusedError({
        code: 'conflict',
        message: 'This plan has a newer version. Ask the customer about the newer one.',
      })
    }
    await ctx.tx.planAcceptance.create({
      data: {
        id: newId(ctx.now),
        planId: plan.id,
        by: input.by,
        how: input.how,
        at: ctx.now,
        recordedById: actor.personId,
      },
    })
    ctx.audit({
      action: 'plan.accept',
      subjectId: plan.id,
      jobId: plan.pair.jobId,
      changes: { number: plan.number, how: input.how },
    })
    return { number: plan.number }
  })
}
