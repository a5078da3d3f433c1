import { z } from 'zod'
import { RefusedError } from '@/lib/core/errors'
import { endSession, touchSession } from '@/lib/data/sessions'
import { readJson } from './read-body'
import { currentSession, sessionIdOfRequest } from './require-actor'
import { refuseForeignOrigin } from './same-origin'

/** Why a tablet went back to the rack. */
const leaving = z.object({ why: z.enum(['idle', 'switched person']) })

/** Somebody touched the tablet. Refused once their session is over: a touch that comes too late wakes nothing. */
export async function touchTablet(request: Request): Promise<void> {
  refuseForeignOrigin(request)
  const [session, id] = [await currentSession(), await sessionIdOfRequest()]
  if (!session || id === null) throw new RefusedError({ code: 'not-signed-in', message: 'You are signed out.' })
  if (session.tablet) await touchSession(id, session.tablet.tabletId, new Date())
}

/** Back to the rack of time cards. A session that is over already stays as it ended. */
export async function leaveTablet(request: Request): Promise<void> {
  refuseForeignOrigin(request)
  const sent = leaving.safeParse(await readJson(request, 1000))
  if (!sent.success) throw new RefusedError({ code: 'invalid', message: 'This could not be read.' })
  const { why } = sent.data
  const [session, id] = [await currentSession(), await sessionIdOfRequest()]
  if (session && id !== null) await endSession(id, why, new Date())
}

/** Whoever is signed in on this device is not any more: an owner who typed the code stays on no tablet. */
export async function endSessionHere(why: string): Promise<void> {
  const id = await sessionIdOfRequest()
  if (id !== null) await endSession(id, why, new Date())
}
