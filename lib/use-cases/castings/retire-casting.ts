import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { castingById } from '@/lib/data/castings'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { RetireCasting } from '@/lib/schemas/casting'

/** Retires a record, or takes a retired one back. Heads that point at it keep it. */
export async function retireCasting(
  actor: Actor,
  input: RetireCasting,
  moment: Moment,
): Promise<{ castingId: string }> {
  must(allow(actor, 'casting.change'))
  return write(actor, moment, async (ctx) => {
    const { castingId, version, retired } = input
    const casting = await castingById(ctx.tx, castingId)
    const changed = await ctx.tx.castingRecord.updateMany({
      where: { id: castingId, version },
      data: { retiredAt: retired ? ctx.now : null, version: { increment: 1 } },
    })
    conflictUnless(changed, casting.name)
    const action = retired ? 'casting.retire' : 'casting.restore'
    ctx.audit({ action, subjectId: castingId })
    return { castingId }
  })
}
