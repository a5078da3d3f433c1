import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { customerById, sumsOfCustomer, withMergedIds } from '@/lib/data/customer-record'
import { contactColumns } from '@/lib/data/customers'
import { putCustomerTexts } from '@/lib/data/find-texts'
import { blankJobNotes } from '@/lib/data/jobs'
import { blankMessages } from '@/lib/data/messages'
import { conflictUnless, write, type Moment, type Write } from '@/lib/data/write'
import type { BlankCustomer } from '@/lib/schemas/customer'

const nothing = { name: 'Removed on request', phone: '', otherPhone: '', email: '', address: '', note: '' }

/**
 * Removes a customer's personal data, and that of records merged into this one: contact, texts of messages, links, and what
 * was noted on the jobs in free words. Papers that were frozen stay as they were handed out, as the law on books asks.
 */
export async function blankCustomer(
  actor: Actor,
  input: BlankCustomer,
  moment: Moment,
): Promise<{ customerId: string }> {
  must(allow(actor, 'customer.blank'))
  const { customerId, version, reason } = input
  return write(actor, moment, async (ctx) => {
    const { contact, mergedIntoId } = await customerById(ctx.tx, customerId)
    if (mergedIntoId !== null || contact.blankedAt) {
      throw new RefusedError({ code: 'wrong-state', message: 'Nothing is left to remove here. Reload the page.' })
    }
    const { open, owedMinor } = await sumsOfCustomer(ctx.tx, customerId)
    if (open > 0) refuseYet('A head of this customer is still here. Hand it over or return it first.')
    if (owedMinor !== 0) refuseYet('Money is still owed. Settle it first.')
    const data = { version: { increment: 1 } }
    conflictUnless(await ctx.tx.customer.updateMany({ where: { id: customerId, version }, data }), contact.name)
    for (const id of await withMergedIds(ctx.tx, customerId)) await blankOne(ctx, id)
    ctx.audit({ action: 'customer.blank', subjectId: customerId, changes: { reason } })
    return { customerId }
  })
}

function refuseYet(message: string): never {
  throw new RefusedError({ code: 'wrong-state', message })
}

async function blankOne(ctx: Write, customerId: string): Promise<void> {
  await ctx.tx.customerContact.update({
    where: { customerId },
    data: { ...contactColumns(nothing, 'US'), blankedAt: ctx.now },
  })
  await blankMessages(ctx.tx, customerId, ctx.now)
  await blankJobNotes(ctx.tx, customerId)
  await ctx.tx.customerLink.updateMany({
    where: { job: { customerId }, revokedAt: null },
    data: { revokedAt: ctx.now },
  })
  await putCustomerTexts(ctx.tx, [customerId])
}
