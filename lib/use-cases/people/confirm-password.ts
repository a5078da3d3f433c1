import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { notePasswordAsked } from '@/lib/data/sessions'
import type { ConfirmPassword } from '@/lib/schemas/person'
import { ownPasswordHash } from './own-password'

type Asked = ConfirmPassword & { readonly sessionId: string }

/** Their password, typed again before a deed that asks for it; it holds for a while, in this session alone. */
export async function confirmPassword(
  actor: Actor,
  { password, sessionId }: Asked,
  { now }: { readonly now: Date },
): Promise<{ confirmed: true }> {
  must(allow(actor, 'job.see'))
  await ownPasswordHash(actor, password, now)
  await notePasswordAsked(sessionId, actor.personId, now)
  return { confirmed: true }
}
