import { allow } from '@/lib/core/access/can'
import { mayHavePin } from '@/lib/core/access/pin-session'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { db } from '@/lib/data/db'
import { personById } from '@/lib/data/people'

export type AccountSeen = {
  readonly name: string
  readonly signIn: string
  readonly hasPin: boolean
  readonly mayHavePin: boolean
}

/** What a person sees of their own sign-in. */
export async function seeAccount(actor: Actor): Promise<AccountSeen> {
  must(allow(actor, 'job.see'))
  const { name, signIn, pinHash } = await personById(await db(), actor.personId)
  return { name, signIn, hasPin: pinHash !== null, mayHavePin: mayHavePin(actor) }
}
