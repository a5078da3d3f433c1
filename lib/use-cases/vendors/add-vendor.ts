import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { newId } from '@/lib/data/ids'
import { write, type Moment } from '@/lib/data/write'
import type { AddVendor } from '@/lib/schemas/vendor'

export async function addVendor(actor: Actor, input: AddVendor, moment: Moment): Promise<{ vendorId: string }> {
  must(allow(actor, 'vendor.change'))
  return write(actor, moment, async (ctx) => {
    const id = newId(ctx.now)
    const { name, phone, email, address, services, boxHeads } = input
    await ctx.tx.vendor.create({
      data: { id, name, phone, email, address, services, boxHeads, createdAt: ctx.now },
    })
    ctx.audit({ action: 'vendor.add', subjectId: id, changes: { name, services, boxHeads } })
    return { vendorId: id }
  })
}
