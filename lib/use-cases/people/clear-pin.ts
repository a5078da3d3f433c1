import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { personById } from '@/lib/data/people'
import { forgetPinTriesOf } from '@/lib/data/pin-tries'
import { endPinSessionsOf } from '@/lib/data/sessions'
import { write, type Moment } from '@/lib/data/write'
import type { ClearPin } from '@/lib/schemas/person'

/** Takes a person's PIN away; they set another with their password. Without one, again changes nothing. */
export async function clearPin(actor: Actor, { personId }: ClearPin, moment: Moment): Promise<{ personId: string }> {
  must(allow(actor, 'person.change'))
  return write(actor, moment, async (ctx) => {
    const person = await personById(ctx.tx, personId)
    if (person.pinHash !== null) {
      await ctx.tx.person.update({ where: { id: personId }, data: { pinHash: null } })
      await forgetPinTriesOf(ctx.tx, personId)
      await endPinSessionsOf(ctx.tx, personId, 'PIN cleared', ctx.now)
      ctx.audit({ action: 'person.clear-pin', subjectId: personId })
    }
    return { personId }
  })
}
