import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { actorOf, endSessionsOf } from '@/lib/data/sessions'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { RetirePerson } from '@/lib/schemas/person'
import { mustKeepAnOwner, personToChange } from './person-row'

/** Retires a person, or takes a retired one back: nobody is ever deleted, their name stands on what they did. */
export async function retirePerson(actor: Actor, input: RetirePerson, moment: Moment): Promise<{ personId: string }> {
  must(allow(actor, 'person.change'))
  return write(actor, moment, async (w) => {
    const { personId, version, retired } = input
    const person = await personToChange(w.tx, personId)
    await mustKeepAnOwner(w.tx, { personId, roles: actorOf(person).roles, retired })
    const changed = await w.tx.person.updateMany({
      where: { id: personId, version },
      data: { retiredAt: retired ? w.now : null, version: { increment: 1 } },
    })
    conflictUnless(changed, person.name)
    await endSessionsOf(w.tx, personId, retired ? 'retired' : 'taken back', w.now)
    const action = retired ? 'retire-person' : 'take-back-person'
    w.audit({ action, subject: 'person', subjectId: personId })
    return { personId }
  })
}
