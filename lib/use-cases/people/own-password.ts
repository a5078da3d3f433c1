import { RefusedError } from '@/lib/core/errors'
import type { Actor } from '@/lib/core/access/roles'
import { db } from '@/lib/data/db'
import { passwordFits } from '@/lib/data/passwords'
import { personById } from '@/lib/data/people'
import { takeTry, takeTryBack, type TryCount } from '@/lib/data/sign-in-tries'
import { wordsForWait } from '@/lib/words/wait'

/**
 * The hash that somebody's own password was compared with, when it is theirs; each try counts before it is looked at.
 * Whoever goes on to change something compares it again in the transaction: it is still theirs.
 */
export async function ownPasswordHash({ personId }: Actor, password: string, now: Date): Promise<string> {
  const client = await db()
  const counts: TryCount[] = [{ kind: 'own', name: personId, place: '' }]
  const waitMs = await takeTry(client, counts, now)
  if (waitMs > 0) {
    const retryAfterS = Math.ceil(waitMs / 1000)
    throw new RefusedError({ code: 'too-many', message: `Too many tries. ${wordsForWait(retryAfterS)}`, retryAfterS })
  }
  const { passwordHash } = await personById(client, personId)
  if (!(await passwordFits(passwordHash, password))) {
    const message = 'This is not your password.'
    throw new RefusedError({ code: 'invalid', message, fields: { password: message } })
  }
  await takeTryBack(client, counts)
  return passwordHash
}
