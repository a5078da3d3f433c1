import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { secretOperation } from '@/lib/data/secret-operation'
import { endSessionsOf } from '@/lib/data/sessions'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { SetPassword } from '@/lib/schemas/person'
import { newPasswordHash } from '@/lib/data/passwords'
import { personToChange } from './person-row'

export async function setPassword(actor: Actor, input: SetPassword, moment: Moment): Promise<{ personId: string }> {
  must(allow(actor, 'person.change'))
  const passwordHash = await newPasswordHash(input.password)
  return write(actor, secretOperation(moment), async (ctx) => {
    const { personId, version } = input
    const person = await personToChange(ctx.tx, personId)
    const changed = await ctx.tx.person.updateMany({
      where: { id: personId, version },
      data: { passwordHash, version: { increment: 1 } },
    })
    conflictUnless(changed, person.name)
    await endSessionsOf(ctx.tx, personId, 'new password', ctx.now)
    ctx.audit({ action: 'person.set-password', subjectId: personId })
    return { personId }
  })
}
