import { allowPin } from '@/lib/core/access/pin-session'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { newPinHash } from '@/lib/data/passwords'
import { forgetPinTriesOf } from '@/lib/data/pin-tries'
import { secretOperation } from '@/lib/data/secret-operation'
import { endPinSessionsOf } from '@/lib/data/sessions'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { SetOwnPin } from '@/lib/schemas/person'
import { ownPasswordHash } from './own-password'

/** A person's own PIN, with their own password. What they opened with the old PIN ends. */
export async function setOwnPin(actor: Actor, input: SetOwnPin, moment: Moment): Promise<{ personId: string }> {
  must(allowPin(actor))
  const { personId } = actor
  const passwordHash = await ownPasswordHash(actor, input.password, moment.now)
  const pinHash = await newPinHash(input.pin)
  return write(actor, secretOperation(moment), async (ctx) => {
    // The password that was just looked at is still theirs.
    const changed = await ctx.tx.person.updateMany({ where: { id: personId, passwordHash }, data: { pinHash } })
    conflictUnless(changed, 'your password')
    await forgetPinTriesOf(ctx.tx, personId)
    await endPinSessionsOf(ctx.tx, personId, 'new PIN', ctx.now)
    ctx.audit({ action: 'person.set-pin', subjectId: personId })
    return { personId }
  })
}
