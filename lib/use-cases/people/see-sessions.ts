import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { db } from '@/lib/data/db'
import { openSessionsOf } from '@/lib/data/sessions'

export type SessionSeen = {
  readonly id: string
  /** By PIN on a tablet of this name, or by password in a browser. */
  readonly tablet: string | null
  readonly browser: string
  readonly address: string
  readonly openedAt: string
  readonly lastSeenAt: string
  /** The one that asks. */
  readonly here: boolean
}

/** What a person has open: their own; the owner sees those of others. `hereId`: the session that asks. */
export async function seeSessions(
  actor: Actor,
  personId: string,
  hereId: string | null,
  now: Date,
): Promise<readonly SessionSeen[]> {
  must(allow(actor, personId === actor.personId ? 'job.see' : 'person.change'))
  return (await openSessionsOf(await db(), personId, now)).map((row) => ({
    id: row.id,
    tablet: row.tablet?.name ?? null,
    browser: row.browser,
    address: row.address,
    openedAt: row.createdAt.toISOString(),
    lastSeenAt: row.lastSeenAt.toISOString(),
    here: row.id === hereId,
  }))
}
