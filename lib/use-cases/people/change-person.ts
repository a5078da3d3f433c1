import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { changesBetween } from '@/lib/data/audit-trail'
import { endSessionsOf } from '@/lib/data/sessions'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { ChangePerson } from '@/lib/schemas/person'
import { mustKeepAnOwner, personToChange } from './person-row'

/** Name, roles and grants. Other rights end the person's sessions, so that nothing goes on under the old ones. */
export async function changePerson(actor: Actor, input: ChangePerson, moment: Moment): Promise<{ personId: string }> {
  must(allow(actor, 'person.change'))
  return write(actor, moment, async (ctx) => {
    const { personId, version, name } = input
    const before = await personToChange(ctx.tx, personId)
    await mustKeepAnOwner(ctx.tx, { personId, roles: input.roles, retired: before.retiredAt !== null })
    const after = { name, roles: input.roles.join(','), grants: input.grants.join(',') }
    const changed = await ctx.tx.person.updateMany({
      where: { id: personId, version },
      data: { ...after, version: { increment: 1 } },
    })
    conflictUnless(changed, before.name)
    if (after.roles !== before.roles || after.grants !== before.grants) {
      await endSessionsOf(ctx.tx, personId, 'rights changed', ctx.now)
    }
    const changes = changesBetween(before, after)
    ctx.audit({ action: 'person.change', subjectId: personId, changes })
    return { personId }
  })
}
