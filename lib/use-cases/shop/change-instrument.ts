import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { changesBetween } from '@/lib/data/audit-trail'
import { refuseWhenFull } from '@/lib/data/in-use'
import { instrumentById } from '@/lib/data/instruments'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { ChangeInstrument } from '@/lib/schemas/shop'

/** Its name, when it was checked, when it is due, and whether it is still in use. */
export async function changeInstrument(
  actor: Actor,
  input: ChangeInstrument,
  moment: Moment,
): Promise<{ instrumentId: string }> {
  must(allow(actor, 'settings.change'))
  return write(actor, moment, async (ctx) => {
    const { instrumentId, version, retired, ...facts } = input
    const before = await instrumentById(ctx.tx, instrumentId)
    if (before.retiredAt !== null && !retired) await refuseWhenFull(ctx.tx, 'instruments')
    const after = { ...facts, retiredAt: retired ? (before.retiredAt ?? ctx.now) : null }
    const changed = await ctx.tx.instrument.updateMany({
      where: { id: instrumentId, version },
      data: { ...after, version: { increment: 1 } },
    })
    conflictUnless(changed, before.name)
    const changes = changesBetween(before, after)
    ctx.audit({ action: 'instrument.change', subjectId: instrumentId, changes })
    return { instrumentId }
  })
}
