import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { db } from '@/lib/data/db'
import { personById } from '@/lib/data/people'
import { liftWaits, waitsOf } from '@/lib/data/sign-in-tries'
import { write, type Moment } from '@/lib/data/write'
import type { OfPerson } from '@/lib/schemas/person'

export type WaitSeen = Awaited<ReturnType<typeof waitsOf>>[number]

/** What a person's sign-in waits for now, after wrong tries. */
export async function seeWaits(actor: Actor, personId: string, now: Date): Promise<readonly WaitSeen[]> {
  must(allow(actor, 'person.change'))
  const client = await db()
  return waitsOf(client, await personById(client, personId), now)
}

/** Lifts them, everywhere. */
export async function liftPersonWaits(
  actor: Actor,
  { personId }: OfPerson,
  moment: Moment,
): Promise<{ personId: string }> {
  must(allow(actor, 'person.change'))
  return write(actor, moment, async (ctx) => {
    const lifted = await liftWaits(ctx.tx, await personById(ctx.tx, personId))
    if (lifted > 0) ctx.audit({ action: 'person.lift-waits', subjectId: personId })
    return { personId }
  })
}
