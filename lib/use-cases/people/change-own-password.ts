import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { db } from '@/lib/data/db'
import { newPasswordHash } from '@/lib/data/passwords'
import { personById } from '@/lib/data/people'
import { endResetLinks } from '@/lib/data/reset-links'
import { secretOperation } from '@/lib/data/secret-operation'
import { endSessionsOf } from '@/lib/data/sessions'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { ChangeOwnPassword } from '@/lib/schemas/person'
import { ownPasswordHash } from './own-password'
import { ownWords } from './own-words'

/** A person's own password, with the old one. Every session of theirs ends, this one too, and no reset link is left. */
export async function changeOwnPassword(
  actor: Actor,
  input: ChangeOwnPassword,
  moment: Moment,
): Promise<{ personId: string }> {
  must(allow(actor, 'job.see'))
  const { personId } = actor
  const before = await ownPasswordHash(actor, input.password, moment.now)
  const passwordHash = await newPasswordHash(input.next, await ownWords(await personById(await db(), personId)), 'next')
  return write(actor, secretOperation(moment), async (ctx) => {
    // The password that was just looked at is still theirs.
    const changed = await ctx.tx.person.updateMany({
      where: { id: personId, passwordHash: before },
      data: { passwordHash },
    })
    conflictUnless(changed, 'your password')
    await endResetLinks(ctx.tx, personId, ctx.now)
    await endSessionsOf(ctx.tx, personId, 'new password', ctx.now)
    ctx.audit({ action: 'person.change-password', subjectId: personId })
    return { personId }
  })
}
