import { keepsAnOwner } from '@/lib/core/access/last-owner'
import type { Role } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { nextNumber } from '@/lib/data/counters'
import type { Tx } from '@/lib/data/db'
import { activePeople, isSignInTaken, personById } from '@/lib/data/people'
import { actorOf } from '@/lib/data/sessions'

/**
 * The person about to be changed. Taking a number of one counter puts changes of people one after the other on every
 * database, so that two owners cannot demote each other at once.
 */
export async function personToChange(tx: Tx, personId: string) {
  await nextNumber(tx, 'people changed')
  return personById(tx, personId)
}

export async function mustKeepAnOwner(
  tx: Tx,
  changed: { readonly personId: string; readonly roles: readonly Role[]; readonly retired: boolean },
): Promise<void> {
  const standings = (await activePeople(tx)).map((person) => ({ ...actorOf(person), retired: false }))
  must(keepsAnOwner(standings, changed))
}

export async function refuseTakenSignIn(tx: Tx, signIn: string, field = 'signIn'): Promise<void> {
  if (!(await isSignInTaken(tx, signIn))) return
  const message = 'This sign-in name is taken. Choose another.'
  throw new RefusedError({ code: 'invalid', message, fields: { [field]: message } })
}
