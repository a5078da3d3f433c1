import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { changesBetween } from '@/lib/data/audit-trail'
import { tabletById } from '@/lib/data/tablets'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { ChangeTablet } from '@/lib/schemas/tablet'

/** Another name, or another station: whoever signs in next stands there. */
export async function changeTablet(actor: Actor, input: ChangeTablet, moment: Moment): Promise<{ tabletId: string }> {
  must(allow(actor, 'tablet.change'))
  return write(actor, moment, async (ctx) => {
    const { tabletId, version, name, station } = input
    const before = await tabletById(ctx.tx, tabletId)
    const after = { name, station }
    const changed = await ctx.tx.tablet.updateMany({
      where: { id: tabletId, version },
      data: { ...after, version: { increment: 1 } },
    })
    conflictUnless(changed, before.name)
    ctx.audit({ action: 'tablet.change', subjectId: tabletId, changes: changesBetween(before, after) })
    return { tabletId }
  })
}
