import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { changesBetween } from '@/lib/data/audit-trail'
import { leaveDefault, refuseSecondName, taxRateById } from '@/lib/data/tax-rates'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { ChangeTaxRate } from '@/lib/schemas/tax'

/** Changes a tax for new lines and the price list. Lines on jobs and invoices keep the rate that they were written with. */
export async function changeTaxRate(actor: Actor, input: ChangeTaxRate, moment: Moment): Promise<{ rateId: string }> {
  must(allow(actor, 'settings.change'))
  return write(actor, moment, async (ctx) => {
    const { rateId, version } = input
    const before = await taxRateById(ctx.tx, rateId)
    const after = { name: input.name, rateMillionths: input.rate, isDefault: input.isDefault }
    await refuseSecondName(ctx.tx, input.name, rateId)
    if (after.isDefault) await leaveDefault(ctx.tx, rateId)
    const changed = await ctx.tx.taxRate.updateMany({
      where: { id: rateId, version },
      data: { ...after, version: { increment: 1 } },
    })
    conflictUnless(changed, before.name)
    ctx.audit({ action: 'tax-rate.change', subjectId: rateId, changes: changesBetween(before, after) })
    return { rateId }
  })
}
