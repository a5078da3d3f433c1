import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { putCastingParts } from '@/lib/data/castings'
import { newId } from '@/lib/data/ids'
import { shopOf } from '@/lib/data/shop'
import { write, type Moment } from '@/lib/data/write'
import type { AddCasting } from '@/lib/schemas/casting'
import { factsOf, flatCasting, partsOf } from './casting-parts'

export async function addCasting(actor: Actor, input: AddCasting, moment: Moment): Promise<{ castingId: string }> {
  must(allow(actor, 'casting.change'))
  return write(actor, moment, async (ctx) => {
    const id = newId(ctx.now)
    const facts = factsOf(input)
    const parts = partsOf(input, await shopOf(ctx.tx))
    const nameLower = facts.name.toLowerCase()
    await ctx.tx.castingRecord.create({ data: { id, ...facts, nameLower, createdAt: ctx.now } })
    await putCastingParts(ctx.tx, id, parts, ctx.now)
    const given = Object.entries(flatCasting(facts, parts)).filter(([, value]) => value !== '')
    const changes = Object.fromEntries(given)
    ctx.audit({ action: 'casting.add', subjectId: id, changes })
    return { castingId: id }
  })
}
