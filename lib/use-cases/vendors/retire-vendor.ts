import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { vendorById } from '@/lib/data/vendors'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { RetireVendor } from '@/lib/schemas/vendor'

/** Retires a vendor, or takes a retired one back. What is out with a retired vendor stays out and comes back as usual. */
export async function retireVendor(actor: Actor, input: RetireVendor, moment: Moment): Promise<{ vendorId: string }> {
  must(allow(actor, 'vendor.change'))
  return write(actor, moment, async (ctx) => {
    const { vendorId, version, retired } = input
    const vendor = await vendorById(ctx.tx, vendorId)
    const changed = await ctx.tx.vendor.updateMany({
      where: { id: vendorId, version },
      data: { retiredAt: retired ? ctx.now : null, version: { increment: 1 } },
    })
    conflictUnless(changed, vendor.name)
    const action = retired ? 'vendor.retire' : 'vendor.restore'
    ctx.audit({ action, subjectId: vendorId })
    return { vendorId }
  })
}
