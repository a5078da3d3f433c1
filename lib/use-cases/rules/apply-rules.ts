import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { currentSettings } from '@/lib/data/settings'
import { bumpVisit, visitById } from '@/lib/data/visits'
import { refreshRoute } from '@/lib/dossier/refresh'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { ApplyRules } from '@/lib/schemas/rules'

/** These heads follow the newest limits and steps from now on. What was done stays done; a released head is not touched. */
export async function applyRules(
  actor: Actor,
  { version, visitIds }: ApplyRules,
  moment: Moment,
): Promise<{ heads: number }> {
  must(allow(actor, 'settings.change'))
  return write(actor, moment, async (ctx) => {
    const current = await currentSettings(ctx.tx)
    conflictUnless({ count: current.version === version ? 1 : 0 }, 'the limits and steps')
    for (const visitId of visitIds) {
      const visit = await visitById(ctx.tx, visitId)
      if (visit.releases.length > 0) {
        throw new RefusedError({
          code: 'wrong-state',
          message: 'One of these heads is now released and keeps its rules. Reload the page.',
        })
      }
      await bumpVisit(ctx.tx, visit)
      await ctx.tx.visit.update({ where: { id: visit.id }, data: { rulesVersion: version } })
      ctx.audit({
        action: 'visit.follow-steps',
        subjectId: visit.id,
        jobId: visit.jobId,
        visitId: visit.id,
        changes: { rulesVersion: { from: visit.rulesVersion, to: version } },
      })
      await refreshRoute(ctx.tx, visit.id, ctx.now)
    }
    return { heads: visitIds.length }
  })
}
