import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { newId } from '@/lib/data/ids'
import { refuseWhenFull } from '@/lib/data/in-use'
import { secretOperation } from '@/lib/data/secret-operation'
import { write, type Moment } from '@/lib/data/write'
import type { AddPerson } from '@/lib/schemas/person'
import { newPasswordHash } from '@/lib/data/passwords'
import { ownWords } from './own-words'
import { refuseTakenSignIn } from './person-row'

/** Without a password they sign in once they have chosen one, by a link that the owner hands on. */
export async function addPerson(actor: Actor, input: AddPerson, moment: Moment): Promise<{ personId: string }> {
  must(allow(actor, 'person.change'))
  const passwordHash = input.password === '' ? '' : await newPasswordHash(input.password, await ownWords(input))
  return write(actor, secretOperation(moment), async (ctx) => {
    await refuseTakenSignIn(ctx.tx, input.signIn)
    await refuseWhenFull(ctx.tx, 'people')
    const id = newId(ctx.now)
    const { name, signIn } = input
    const roles = input.roles.join(',')
    const grants = input.grants.join(',')
    await ctx.tx.person.create({ data: { id, name, signIn, passwordHash, roles, grants, createdAt: ctx.now } })
    ctx.audit({
      action: 'person.add',
      subjectId: id,
      changes: { name, signIn, roles, grants },
    })
    return { personId: id }
  })
}
