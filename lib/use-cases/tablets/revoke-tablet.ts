import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { endSessionsOn } from '@/lib/data/sessions'
import { tabletById } from '@/lib/data/tablets'
import { write, type Moment } from '@/lib/data/write'
import type { RevokeTablet } from '@/lib/schemas/tablet'

/** The device is no tablet any more, and nobody's session on it goes on. Revoked is revoked: again changes nothing. */
export async function revokeTablet(
  actor: Actor,
  { tabletId }: RevokeTablet,
  moment: Moment,
): Promise<{ tabletId: string }> {
  must(allow(actor, 'tablet.change'))
  return write(actor, moment, async (ctx) => {
    const tablet = await tabletById(ctx.tx, tabletId)
    if (tablet.revokedAt === null) {
      await ctx.tx.tablet.update({ where: { id: tabletId }, data: { revokedAt: ctx.now } })
      await endSessionsOn(ctx.tx, tabletId, 'tablet revoked', ctx.now)
      ctx.audit({ action: 'tablet.revoke', subjectId: tabletId })
    }
    return { tabletId }
  })
}
