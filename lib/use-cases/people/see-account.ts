import { allow } from '@/lib/core/access/can'
import { mayHavePin } from '@/lib/core/access/pin-session'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { db } from '@/lib/data/db'
import { personById } from '@/lib/data/people'
import { recoveryCodesLeft } from '@/lib/data/second-factor'

export type AccountSeen = {
  readonly name: string
  readonly signIn: string
  readonly hasPin: boolean
  readonly mayHavePin: boolean
  readonly hasFactor: boolean
  /** Recovery codes that were not used yet. */
  readonly codesLeft: number
}

/** What a person sees of their own sign-in. */
export async function seeAccount(actor: Actor): Promise<AccountSeen> {
  must(allow(actor, 'job.see'))
  const client = await db()
  const { name, signIn, pinHash, factorKey } = await personById(client, actor.personId)
  const codesLeft = await recoveryCodesLeft(client, actor.personId)
  return {
    name,
    signIn,
    hasPin: pinHash !== null,
    mayHavePin: mayHavePin(actor),
    hasFactor: factorKey !== null,
    codesLeft,
  }
}
