import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { castingById } from '@/lib/data/castings'
import { wantedOnCasting } from '@/lib/data/stored/wanted'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import { refreshOpenVisits } from '@/lib/dossier/refresh'
import { wantedChanges } from '@/lib/dossier/wanted-changes'
import { keptWanted, type ChangeCastingWanted } from '@/lib/schemas/wanted'

/** What the benches work to on every head of a casting whose job does not say otherwise. */
export async function changeCastingWanted(
  actor: Actor,
  { castingId, version, wanted }: ChangeCastingWanted,
  moment: Moment,
): Promise<{ castingId: string }> {
  must(allow(actor, 'casting.change'))
  return write(actor, moment, async (ctx) => {
    const before = await castingById(ctx.tx, castingId)
    const after = keptWanted(wanted)
    const changes = wantedChanges(wantedOnCasting.read(before.wanted, castingId), after)
    if (Object.keys(changes).length === 0) return { castingId }
    const changed = await ctx.tx.castingRecord.updateMany({
      where: { id: castingId, version },
      data: { wanted: wantedOnCasting.write(after), version: { increment: 1 } },
    })
    conflictUnless(changed, before.name)
    await refreshOpenVisits(ctx.tx, { head: { castingId } }, ctx.now)
    ctx.audit({ action: 'casting.change', subjectId: castingId, changes })
    return { castingId }
  })
}
