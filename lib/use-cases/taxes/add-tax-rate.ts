import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { newId } from '@/lib/data/ids'
import { refuseWhenFull } from '@/lib/data/in-use'
import { refuseSecondName, leaveDefault } from '@/lib/data/tax-rates'
import { write, type Moment } from '@/lib/data/write'
import type { AddTaxRate } from '@/lib/schemas/tax'

/** A tax by its name, for price lines to pick. */
export async function addTaxRate(actor: Actor, input: AddTaxRate, moment: Moment): Promise<{ rateId: string }> {
  must(allow(actor, 'settings.change'))
  return write(actor, moment, async (ctx) => {
    await refuseWhenFull(ctx.tx, 'taxes')
    const id = newId(ctx.now)
    const row = { name: input.name, rateMillionths: input.rate, isDefault: input.isDefault }
    await refuseSecondName(ctx.tx, input.name, id)
    if (row.isDefault) await leaveDefault(ctx.tx, id)
    await ctx.tx.taxRate.create({ data: { id, ...row, createdAt: ctx.now } })
    ctx.audit({ action: 'tax-rate.add', subjectId: id, changes: row })
    return { rateId: id }
  })
}
