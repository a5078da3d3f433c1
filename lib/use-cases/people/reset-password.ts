import { RefusedError } from '@/lib/core/errors'
import { db } from '@/lib/data/db'
import { forgetDevices } from '@/lib/data/known-devices'
import { newPasswordHash } from '@/lib/data/passwords'
import { personOfResetLink, spendResetLink } from '@/lib/data/reset-links'
import { actorOf, endSessionsOf } from '@/lib/data/sessions'
import { liftWaits } from '@/lib/data/sign-in-tries'
import { write } from '@/lib/data/write'
import type { ResetPassword } from '@/lib/schemas/person'
import { ownWords } from './own-words'

const noLink = () =>
  new RefusedError({
    code: 'not-found',
    message: 'This link does not work any more. Ask the owner for a new one.',
  })

/** Whose password a link resets; refused without saying why it does not. */
export async function seeResetLink(token: string, now: Date): Promise<{ name: string; signIn: string }> {
  const person = await personOfResetLink(await db(), token, now)
  if (!person) throw noLink()
  return { name: person.name, signIn: person.signIn }
}

/**
 * A new password for whoever holds a link to choose one. All their sessions end, no browser counts as theirs any more, and
 * what they waited for is lifted. Their second factor stays: a link alone signs nobody in.
 */
export async function resetPassword(
  input: ResetPassword,
  { now }: { readonly now: Date },
): Promise<{ signIn: string }> {
  const person = await personOfResetLink(await db(), input.token, now)
  if (!person) throw noLink()
  const passwordHash = await newPasswordHash(input.password, await ownWords(person))
  return write(actorOf(person), { now }, async (ctx) => {
    if (!(await spendResetLink(ctx.tx, input.token, now))) throw noLink()
    await ctx.tx.person.update({ where: { id: person.id }, data: { passwordHash } })
    await endSessionsOf(ctx.tx, person.id, 'password reset', now)
    await forgetDevices(ctx.tx, person.id)
    await liftWaits(ctx.tx, person)
    ctx.audit({ action: 'person.reset-password', subjectId: person.id })
    return { signIn: person.signIn }
  })
}
