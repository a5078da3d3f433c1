import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { phoneCountry } from '@/lib/core/shop/country'
import { changesBetween } from '@/lib/data/audit-trail'
import { customerById } from '@/lib/data/customer-record'
import { contactColumns } from '@/lib/data/customers'
import { putCustomerTexts } from '@/lib/data/find-texts'
import { shopOf } from '@/lib/data/shop'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { ChangeCustomer } from '@/lib/schemas/customer'
import { fieldName } from '@/lib/words/audit-values'

/** Changes how a customer is called and reached. The trail says which fields, never what they hold: it cannot be blanked. */
export async function changeCustomer(
  actor: Actor,
  input: ChangeCustomer,
  moment: Moment,
): Promise<{ customerId: string }> {
  must(allow(actor, 'customer.change'))
  return write(actor, moment, async (ctx) => {
    const { customerId, version, ...typed } = input
    const { contact: before, mergedIntoId } = await customerById(ctx.tx, customerId)
    refuseEnded({ mergedIntoId, blankedAt: before.blankedAt })
    const changed = await ctx.tx.customer.updateMany({
      where: { id: customerId, version },
      data: { version: { increment: 1 } },
    })
    conflictUnless(changed, before.name)
    const data = contactColumns(typed, phoneCountry(await shopOf(ctx.tx)))
    await ctx.tx.customerContact.update({ where: { customerId }, data })
    await putCustomerTexts(ctx.tx, [customerId])
    const contact = Object.keys(changesBetween(before, typed)).map((field) => fieldName(field))
    ctx.audit({ action: 'customer.change-contact', subjectId: customerId, changes: { contact } })
    return { customerId }
  })
}

/** One that was merged or blanked is not changed any more. */
export function refuseEnded(customer: { mergedIntoId: string | null; blankedAt: Date | null }): void {
  if (customer.mergedIntoId === null && customer.blankedAt === null) return
  const what = customer.blankedAt ? 'The personal data of this customer was removed.' : 'This customer was merged.'
  throw new RefusedError({ code: 'wrong-state', message: `${what} Reload the page.` })
}
