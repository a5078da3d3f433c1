import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { changesBetween } from '@/lib/data/audit-trail'
import { vendorById } from '@/lib/data/vendors'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { ChangeVendor } from '@/lib/schemas/vendor'

export async function changeVendor(actor: Actor, input: ChangeVendor, moment: Moment): Promise<{ vendorId: string }> {
  must(allow(actor, 'vendor.change'))
  return write(actor, moment, async (ctx) => {
    const { vendorId, version, ...after } = input
    const before = await vendorById(ctx.tx, vendorId)
    const changed = await ctx.tx.vendor.updateMany({
      where: { id: vendorId, version },
      data: { ...after, version: { increment: 1 } },
    })
    conflictUnless(changed, before.name)
    ctx.audit({
      action: 'vendor.change',
      subjectId: vendorId,
      changes: withoutContacts(changesBetween(before, after)),
    })
    return { vendorId }
  })
}

/** The trail says that an address or number changed, never what it is: the trail cannot be blanked. */
function withoutContacts(changes: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const { phone, email, address, ...rest } = changes
  const contact = Object.entries({ phone, email, address }).flatMap(([field, change]) => (change ? [field] : []))
  return contact.length === 0 ? rest : { ...rest, contact }
}
