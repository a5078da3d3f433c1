import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { newId } from '@/lib/data/ids'
import { refuseWhenFull } from '@/lib/data/in-use'
import { write, type Moment } from '@/lib/data/write'
import type { AddInstrument } from '@/lib/schemas/shop'

export async function addInstrument(
  actor: Actor,
  input: AddInstrument,
  moment: Moment,
): Promise<{ instrumentId: string }> {
  must(allow(actor, 'settings.change'))
  return write(actor, moment, async (ctx) => {
    await refuseWhenFull(ctx.tx, 'instruments')
    const id = newId(ctx.now)
    await ctx.tx.instrument.create({ data: { id, ...input, createdAt: ctx.now } })
    ctx.audit({ action: 'instrument.add', subjectId: id, changes: input })
    return { instrumentId: id }
  })
}
