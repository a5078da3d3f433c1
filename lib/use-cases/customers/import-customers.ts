import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { phoneCountry } from '@/lib/core/shop/country'
import { addCustomers } from '@/lib/data/customer-import'
import { newId } from '@/lib/data/ids'
import { shopOf } from '@/lib/data/shop'
import { write, type Moment } from '@/lib/data/write'
import type { ImportInput } from '@/lib/schemas/customer'
import { importPlan } from './import-plan'

export type Imported = { readonly added: number; readonly bad: number; readonly doubled: number }

/** Takes the good lines of a list; who is on record, or came in since the preview, is not taken twice. */
export async function importCustomers(actor: Actor, input: ImportInput, moment: Moment): Promise<Imported> {
  must(allow(actor, 'customer.change'))
  return write(actor, moment, async (ctx) => {
    const { take, bad, doubled } = await importPlan(ctx.tx, input)
    if (take.length === 0) {
      throw new RefusedError({ code: 'invalid', message: 'No line can be taken: each is wrong or already on record.' })
    }
    const contacts = take.map(({ contact }) => contact)
    await addCustomers(ctx, contacts, phoneCountry(await shopOf(ctx.tx)))
    const counts = { added: take.length, bad: bad.length, doubled: doubled.length }
    ctx.audit({ action: 'customer.import', subjectId: newId(ctx.now), changes: counts })
    return counts
  })
}
