import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { refuseWhenFull } from '@/lib/data/in-use'
import { actorOf, endSessionsOf } from '@/lib/data/sessions'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { RetirePerson } from '@/lib/schemas/person'
import { mustKeepAnOwner, personToChange } from './person-row'

/** Retires a person, or takes a retired one back: nobody is ever deleted, their name stands on what they did. */
export async function retirePerson(actor: Actor, input: RetirePerson, moment: Moment): Promise<{ personId: string }> {
  must(allow(actor, 'person.change'))
  return write(actor, moment, async (ctx) => {
    const { personId, version, retired } = input
    const person = await personToChange(ctx.tx, personId)
    await mustKeepAnOwner(ctx.tx, { personId, roles: actorOf(person).roles, retired })
    if (!retired) await refuseWhenFull(ctx.tx, 'people')
    const changed = await ctx.tx.person.updateMany({
      where: { id: personId, version, retiredAt: retired ? null : { not: null } },
      // The version is that of name and rights: a form with them on the same page is not out of date.
      data: { retiredAt: retired ? ctx.now : null },
    })
    conflictUnless(changed, person.name)
    await endSessionsOf(ctx.tx, personId, retired ? 'retired' : 'taken back', ctx.now)
    const action = retired ? 'person.retire' : 'person.restore'
    ctx.audit({ action, subjectId: personId })
    return { personId }
  })
}
