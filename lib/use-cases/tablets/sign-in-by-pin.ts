import { mayHavePin } from '@/lib/core/access/pin-session'
import { db } from '@/lib/data/db'
import { passwordFits } from '@/lib/data/passwords'
import { personToSignIn } from '@/lib/data/people'
import { forgetPinTries, takePinTry } from '@/lib/data/pin-tries'
import { actorOf, openPinSession } from '@/lib/data/sessions'
import { tabletAt } from '@/lib/data/tablets'

export type PinTried =
  | { readonly kind: 'in'; readonly sessionId: string; readonly personId: string; readonly tabletId: string }
  | { readonly kind: 'no-tablet' }
  /** Whose PIN it was to be, where that is somebody on record: for the log. */
  | { readonly kind: 'wrong' | 'wait'; readonly tabletId: string; readonly personId?: string }

type Tried = { readonly personId: string; readonly pin: string; readonly token: string | null }

/** Opens a session for whoever types their PIN on an enrolled device. Each try counts before it is looked at. */
export async function signInByPin({ personId, pin, token }: Tried, now: Date): Promise<PinTried> {
  const client = await db()
  const tablet = await tabletAt(client, token)
  if (!tablet) return { kind: 'no-tablet' }
  const person = await personToSignIn(client, personId)
  const usable = person && mayHavePin(actorOf(person)) ? person : null
  const at = { personId, tabletId: tablet.tabletId }
  const whose = { tabletId: tablet.tabletId, ...(person ? { personId: person.id } : {}) }
  if (person && (await takePinTry(client, at, now)) > 0) return { kind: 'wait', ...whose }
  // Looked at for everybody, so that the answer takes as long.
  if (!(await passwordFits(usable?.pinHash ?? null, pin)) || !usable) return { kind: 'wrong', ...whose }
  await forgetPinTries(client, at)
  return { kind: 'in', ...at, sessionId: await openPinSession(personId, tablet, now) }
}
