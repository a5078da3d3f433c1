import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { placesTurnedRound } from '@/lib/core/casting/turned-round'
import { must, RefusedError } from '@/lib/core/errors'
import { changesBetween } from '@/lib/data/audit-trail'
import { castingById, putCastingParts } from '@/lib/data/castings'
import { putHeadTextsOfCasting } from '@/lib/data/find-texts'
import { refreshOpenVisits } from '@/lib/dossier/refresh'
import { shopOf } from '@/lib/data/shop'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { ChangeCasting } from '@/lib/schemas/casting'
import { factsOf, flatCasting, partsOf } from './casting-parts'

/** Changes the record. Plans already made keep the figures they were made with; routes of heads still here follow. */
export async function changeCasting(
  actor: Actor,
  input: ChangeCasting,
  moment: Moment,
): Promise<{ castingId: string }> {
  must(allow(actor, 'casting.change'))
  return write(actor, moment, async (ctx) => {
    const { castingId, version } = input
    const before = await castingById(ctx.tx, castingId)
    const facts = factsOf(input)
    const parts = partsOf(input, await shopOf(ctx.tx))
    refuseTurnedRound(placesTurnedRound(before, { ...facts, ...parts }))
    const changed = await ctx.tx.castingRecord.updateMany({
      where: { id: castingId, version },
      data: { ...facts, nameLower: facts.name.toLowerCase(), version: { increment: 1 } },
    })
    conflictUnless(changed, before.name)
    await putCastingParts(ctx.tx, castingId, parts, ctx.now)
    if (facts.name !== before.name) await putHeadTextsOfCasting(ctx.tx, castingId, facts.name)
    await refreshOpenVisits(ctx.tx, { head: { castingId } }, ctx.now)
    const changes = changesBetween(flatCasting(before, before), flatCasting(facts, parts))
    ctx.audit({ action: 'casting.change', subjectId: castingId, changes })
    return { castingId }
  })
}

/** A place keeps its meaning: it is entered anew from the other edge, or the deep edge stays. */
function refuseTurnedRound(places: readonly string[]): void {
  if (places.length === 0) return
  const message = `These are measured from the shallow edge, which is the other one now: ${places.join(', ')}. Count them from the other edge (milled width less what stands there), or keep the deep edge.`
  throw new RefusedError({ code: 'invalid', message, fields: { deepEdge: message } })
}
