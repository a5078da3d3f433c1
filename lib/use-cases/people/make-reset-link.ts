import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { personById } from '@/lib/data/people'
import { addResetLink, resetPath } from '@/lib/data/reset-links'
import { shopAddress } from '@/lib/data/shop-address'
import { write, type Moment } from '@/lib/data/write'
import type { OfPerson } from '@/lib/schemas/person'

export type MadeResetLink = { readonly address: string; readonly expiresAt: string }

/**
 * A link by which a person chooses a new password; whoever hands it on does not learn it. It works once, for a day, and
 * takes the place of an earlier one. Shown this once: what is kept, also of the operation's answer, does not hold it.
 */
export async function makeResetLink(actor: Actor, { personId }: OfPerson, moment: Moment): Promise<MadeResetLink> {
  must(allow(actor, 'person.change'))
  let made: { readonly token: string; readonly expiresAt: Date } | undefined
  await write(actor, moment, async (ctx) => {
    const person = await personById(ctx.tx, personId)
    if (person.retiredAt !== null) {
      throw new RefusedError({ code: 'wrong-state', message: `${person.name} is retired. Restore them first.` })
    }
    made = await addResetLink(ctx, personId)
    ctx.audit({ action: 'person.make-reset-link', subjectId: personId })
  })
  if (!made) {
    throw new RefusedError({ code: 'wrong-state', message: 'This link was already shown once. Make a new one.' })
  }
  return { address: `${shopAddress()}${resetPath(made.token)}`, expiresAt: made.expiresAt.toISOString() }
}
