import 'server-only'
import { atTablet, pinSessionHolds } from '@/lib/core/access/pin-session'
import type { Actor, Grant, Role } from '@/lib/core/access/roles'
import { db, type Reader } from './db'
import { tokenHashOf } from './device-secrets'
import { newId } from './ids'

const idleMs = 12 * 60 * 60 * 1000
const absoluteMs = 7 * 24 * 60 * 60 * 1000
/** A shift: whoever works on after it types the PIN again. */
const absolutePinMs = 12 * 60 * 60 * 1000
const seenEveryMs = 60 * 1000

const words = (text: string): string[] => text.split(',').filter(Boolean)

export const actorOf = (person: { id: string; name: string; roles: string; grants: string }): Actor => ({
  personId: person.id,
  name: person.name,
  roles: words(person.roles) as Role[],
  grants: words(person.grants) as Grant[],
})

export async function openSession(personId: string, now: Date): Promise<string> {
  const client = await db()
  const id = newId(now)
  await client.session.create({
    data: { id, personId, createdAt: now, lastSeenAt: now, expiresAt: new Date(now.getTime() + absoluteMs) },
  })
  return id
}

export type NewPinSession = { readonly personId: string; readonly tabletId: string; readonly idleMs: number }

export async function openPinSession(reader: Reader, session: NewPinSession, now: Date): Promise<string> {
  const id = newId(now)
  const expiresAt = new Date(now.getTime() + absolutePinMs)
  await reader.session.create({
    data: { id, kind: 'pin', ...session, createdAt: now, lastSeenAt: now, expiresAt },
  })
  return id
}

/** The tablet that a PIN session is of. */
export type AtTablet = { readonly tabletId: string; readonly idleMs: number }

/** Who is asking, and by what: `tablet` is null when they signed in with a password. */
export type SignedIn = { readonly actor: Actor; readonly tablet: AtTablet | null }

const openSessionOf = async (reader: Reader, id: string, now: Date) => {
  const session = await reader.session.findUnique({ where: { id }, include: { person: true, tablet: true } })
  return !session || session.endedAt || session.person.retiredAt || session.expiresAt <= now ? null : session
}

type Row = NonNullable<Awaited<ReturnType<typeof openSessionOf>>>

/**
 * The person behind a session id, or null when it ended, expired, idled out, or the person was retired. `token`: what the
 * device's cookie says; a PIN session is nobody's on another device.
 */
export async function signedInBy(sessionId: string, token: string | null, now: Date): Promise<SignedIn | null> {
  const client = await db()
  const session = await openSessionOf(client, sessionId, now)
  if (!session) return null
  if (session.kind !== 'password') return atItsTablet(session, token, now)
  const sinceMs = now.getTime() - session.lastSeenAt.getTime()
  if (sinceMs > idleMs) return null
  if (sinceMs > seenEveryMs) await client.session.update({ where: { id: sessionId }, data: { lastSeenAt: now } })
  return { actor: actorOf(session.person), tablet: null }
}

/** Asking alone does not keep it up: a page that stands there asks by itself. `touchSession` does. */
function atItsTablet({ person, tablet, idleMs, lastSeenAt }: Row, token: string | null, now: Date): SignedIn | null {
  if (tablet === null || idleMs === null) return null
  const { tokenHash, revokedAt } = tablet
  const tokenHashHere = token === null ? null : tokenHashOf(token)
  if (!pinSessionHolds({ lastSeenAt, idleMs, tokenHash, revokedAt }, tokenHashHere, now)) return null
  return { actor: atTablet(actorOf(person)), tablet: { tabletId: tablet.id, idleMs } }
}

/** The person behind a session on a device that is no tablet. */
export const actorOfSession = async (sessionId: string, now: Date): Promise<Actor | null> =>
  (await signedInBy(sessionId, null, now))?.actor ?? null

/** Somebody touched the tablet; its session, which must still hold, goes on from now. */
export async function touchSession(sessionId: string, tabletId: string, now: Date): Promise<void> {
  const client = await db()
  await client.session.updateMany({
    where: { id: sessionId, endedAt: null, lastSeenAt: { lt: now } },
    data: { lastSeenAt: now },
  })
  await client.tablet.updateMany({
    where: { id: tabletId, lastSeenAt: { lt: new Date(now.getTime() - seenEveryMs) } },
    data: { lastSeenAt: now },
  })
}

export async function endSession(sessionId: string, reason: string, now: Date): Promise<void> {
  const client = await db()
  await client.session.updateMany({
    where: { id: sessionId, endedAt: null },
    data: { endedAt: now, endReason: reason },
  })
}

/** Ends every session of a person: sign-out everywhere, disable, demotion, new password. */
export async function endSessionsOf(reader: Reader, personId: string, reason: string, now: Date): Promise<void> {
  await reader.session.updateMany({ where: { personId, endedAt: null }, data: { endedAt: now, endReason: reason } })
}

/** Ends what a person opened with a PIN: another PIN, or none any more. */
export async function endPinSessionsOf(reader: Reader, personId: string, reason: string, now: Date): Promise<void> {
  await reader.session.updateMany({
    where: { personId, kind: 'pin', endedAt: null },
    data: { endedAt: now, endReason: reason },
  })
}

/** Ends everybody's sessions on a tablet. */
export async function endSessionsOn(reader: Reader, tabletId: string, reason: string, now: Date): Promise<void> {
  await reader.session.updateMany({ where: { tabletId, endedAt: null }, data: { endedAt: now, endReason: reason } })
}
