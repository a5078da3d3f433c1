import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { personOfSession } from '@/lib/data/sessions'
import { write, type Moment } from '@/lib/data/write'
import type { EndASession } from '@/lib/schemas/person'

/** Ends one session: a person their own, the owner anybody's. One that is over already stays as it ended. */
export async function endASession(
  actor: Actor,
  { sessionId }: EndASession,
  moment: Moment,
): Promise<{ sessionId: string }> {
  must(allow(actor, 'job.see'))
  return write(actor, moment, async (ctx) => {
    const personId = await personOfSession(ctx.tx, sessionId)
    // Somebody else's is answered like one that never was.
    if (personId === null || !(personId === actor.personId || allow(actor, 'person.change').ok)) {
      throw new RefusedError({ code: 'not-found', message: 'There is no such session.' })
    }
    const ended = await ctx.tx.session.updateMany({
      where: { id: sessionId, endedAt: null },
      data: { endedAt: ctx.now, endReason: 'ended from the list' },
    })
    if (ended.count > 0) ctx.audit({ action: 'person.end-session', subjectId: personId })
    return { sessionId }
  })
}
