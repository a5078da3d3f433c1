import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { write, type Moment } from '@/lib/data/write'
import type { ruleOnCutSchema } from '@/lib/schemas/casting'

/** The owner counts a cut behind its casting's rate, or leaves it out, and says why. */
export async function ruleOnCut(actor: Actor, input: z.output<typeof ruleOnCutSchema>, moment: Moment) {
  must(allow(actor, 'casting.change'))
  return write(actor, moment, async (ctx) => {
    const { visitId, ruling, reason } = input
    const changed = await ctx.tx.shopCut.updateMany({
      where: { visitId },
      data: { ruling, rulingReason: reason, rulingById: ctx.actor.personId, rulingAt: ctx.now },
    })
    if (changed.count === 0) {
      throw new RefusedError({ code: 'not-found', message: 'This head has no cut on record. Reload the page.' })
    }
    const action = ruling === 'count' ? ('shop-cut.count' as const) : ('shop-cut.leave-out' as const)
    ctx.audit({ action, subjectId: visitId, visitId, changes: { reason } })
    return { visitId }
  })
}
