import { RefusedError } from '@/lib/core/errors'
import { db } from '@/lib/data/db'
import { activePeople, personBySignIn } from '@/lib/data/people'
import { addResetLink, resetPath } from '@/lib/data/reset-links'
import { dropFactor } from '@/lib/data/second-factor'
import { actorOf } from '@/lib/data/sessions'
import { write } from '@/lib/data/write'

type Asked = {
  readonly signIn: string
  /** The phone is lost too: nothing but the new password is asked for at the next sign-in. */
  readonly withoutFactor: boolean
}

export type ConsoleLink = { readonly name: string; readonly path: string; readonly expiresAt: Date }

const mostNamed = 20

/**
 * A link to choose a new password, for whoever sits at the shop's computer: the way back for an owner whom nobody else can
 * give one. It is what the owner makes for others, and the trail says that a command made it. Nobody is signed in: who
 * can run this can read the data folder anyway.
 */
export async function resetLinkFromConsole({ signIn, withoutFactor }: Asked, now: Date): Promise<ConsoleLink> {
  const person = await personBySignIn(signIn)
  if (!person) throw new RefusedError({ code: 'not-found', message: await nobody(signIn) })
  if (person.retiredAt !== null) {
    const message = `${person.name} is retired. An owner restores them first, under People.`
    throw new RefusedError({ code: 'wrong-state', message })
  }
  return write({ service: 'console' }, { now }, async (ctx) => {
    const { token, expiresAt } = await addResetLink(ctx, person.id)
    ctx.audit({ action: 'person.make-reset-link', subjectId: person.id })
    if (withoutFactor && person.factorKey !== null) {
      await dropFactor(ctx.tx, person.id)
      ctx.audit({ action: 'person.clear-factor', subjectId: person.id })
    }
    return { name: person.name, path: resetPath(token), expiresAt }
  })
}

async function nobody(signIn: string): Promise<string> {
  const people = await activePeople(await db())
  const owners = people.filter((person) => actorOf(person).roles.includes('owner')).map((person) => person.signIn)
  const known = owners.length > 0 ? ` Owners sign in as: ${owners.slice(0, mostNamed).join(', ')}.` : ''
  return `Nobody signs in here as “${signIn}”.${known}`
}
