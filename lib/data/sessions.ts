import 'server-only'
import { wasAskedLately } from '@/lib/core/access/asks-again'
import { atTablet, pinSessionHolds } from '@/lib/core/access/pin-session'
import type { Actor, Grant, Role } from '@/lib/core/access/roles'
import { bestEffort } from './best-effort'
import { db, type Reader } from './db'
import { tokenHashOf } from './device-secrets'
import { newId } from './ids'
import { keepSeen, lastSeenOf } from './last-seen'

const idleMs = 12 * 60 * 60 * 1000
const absoluteMs = 7 * 24 * 60 * 60 * 1000
/** A shift: whoever works on at a tablet after it signs in again. */
const absoluteAtTabletMs = 12 * 60 * 60 * 1000
const seenEveryMs = 60 * 1000

const words = (text: string): string[] => text.split(',').filter(Boolean)

export const actorOf = (person: { id: string; name: string; roles: string; grants: string }): Actor => ({
  personId: person.id,
  name: person.name,
  roles: words(person.roles) as Role[],
  grants: words(person.grants) as Grant[],
})

/** An enrolled tablet, and how long a session on it may be left alone. */
export type AtTablet = { readonly tabletId: string; readonly idleMs: number }

/** What a list of sessions says of where each was opened. */
export type OpenedFrom = { readonly browser: string; readonly address: string }

/** By a password; `at`: on an enrolled tablet, where nobody stays signed in for the next one. */
export async function openSession(
  personId: string,
  now: Date,
  at: AtTablet | null = null,
  from?: OpenedFrom,
): Promise<string> {
  return addSession({ personId, kind: 'password', ...at, ...from }, at ? absoluteAtTabletMs : absoluteMs, now)
}

export const openPinSession = (personId: string, at: AtTablet, now: Date): Promise<string> =>
  addSession({ personId, kind: 'pin', ...at }, absoluteAtTabletMs, now)

type NewSession = { readonly personId: string; readonly kind: 'password' | 'pin' } & Partial<AtTablet & OpenedFrom>

async function addSession(session: NewSession, lastsMs: number, now: Date): Promise<string> {
  const id = newId(now)
  const expiresAt = new Date(now.getTime() + lastsMs)
  await (await db()).session.create({ data: { id, ...session, createdAt: now, lastSeenAt: now, expiresAt } })
  return id
}

/** Who is asking, on which tablet (null: on none), and whether they typed their password so lately that it is not asked again. */
export type SignedIn = { readonly actor: Actor; readonly tablet: AtTablet | null; readonly askedLately: boolean }

const openSessionOf = async (reader: Reader, id: string, now: Date) => {
  const session = await reader.session.findUnique({ where: { id }, include: { person: true, tablet: true } })
  return !session || session.endedAt || session.person.retiredAt || session.expiresAt <= now ? null : session
}

type Row = NonNullable<Awaited<ReturnType<typeof openSessionOf>>>

/**
 * The person behind a session id, or null when it ended, expired, idled out, or the person was retired. `token`: what the
 * device's cookie says; a session that was opened on a tablet is nobody's on another device.
 */
export async function signedInBy(sessionId: string, token: string | null, now: Date): Promise<SignedIn | null> {
  const client = await db()
  const session = await openSessionOf(client, sessionId, now)
  if (!session) return null
  if (session.kind !== 'password' || session.tabletId !== null) return atItsTablet(session, token, now)
  const sinceMs = now.getTime() - lastSeenOf(session).getTime()
  if (sinceMs > idleMs) return null
  if (sinceMs > seenEveryMs) {
    await keepSeen(sessionId, now, client.session.update({ where: { id: sessionId }, data: { lastSeenAt: now } }))
  }
  return { actor: actorOf(session.person), tablet: null, askedLately: wasAskedLately(session, now) }
}

/** Asking alone does not keep it up: a page that stands there asks by itself. `touchSession` does. */
function atItsTablet(row: Row, token: string | null, now: Date): SignedIn | null {
  const { kind, person, tablet, idleMs } = row
  if (tablet === null || idleMs === null) return null
  const { tokenHash, revokedAt } = tablet
  const lastSeenAt = lastSeenOf(row)
  const tokenHashHere = token === null ? null : tokenHashOf(token)
  if (!pinSessionHolds({ lastSeenAt, idleMs, tokenHash, revokedAt }, tokenHashHere, now)) return null
  const actor = actorOf(person)
  const at = { tabletId: tablet.id, idleMs }
  return { actor: kind === 'password' ? actor : atTablet(actor), tablet: at, askedLately: wasAskedLately(row, now) }
}

/** The person behind a session on a device that is no tablet. */
export const actorOfSession = async (sessionId: string, now: Date): Promise<Actor | null> =>
  (await signedInBy(sessionId, null, now))?.actor ?? null

/** Somebody touched the tablet; its session, which must still hold, goes on from now. */
export async function touchSession(sessionId: string, tabletId: string, now: Date): Promise<void> {
  const client = await db()
  const open = { id: sessionId, endedAt: null, lastSeenAt: { lt: now } }
  await keepSeen(sessionId, now, client.session.updateMany({ where: open, data: { lastSeenAt: now } }))
  const seenBefore = new Date(now.getTime() - seenEveryMs)
  const tablet = { id: tabletId, lastSeenAt: { lt: seenBefore } }
  await bestEffort(client.tablet.updateMany({ where: tablet, data: { lastSeenAt: now } }))
}

/** The password was typed again in this session, which must be the person's and still open. */
export async function notePasswordAsked(sessionId: string, personId: string, now: Date): Promise<void> {
  await (await db()).session.updateMany({ where: { id: sessionId, personId, endedAt: null }, data: { askedAt: now } })
}

/** Whose a session is, over or not; null: there is none. */
export const personOfSession = async (reader: Reader, id: string): Promise<string | null> =>
  (await reader.session.findUnique({ where: { id }, select: { personId: true } }))?.personId ?? null

/** More than a person opens in a week; the newest come first. */
const mostShown = 50

/** What a person has open now. */
export async function openSessionsOf(reader: Reader, personId: string, now: Date) {
  const rows = await reader.session.findMany({
    where: { personId, endedAt: null, expiresAt: { gt: now } },
    include: { tablet: { select: { name: true, revokedAt: true } } },
    orderBy: [{ lastSeenAt: 'desc' }, { id: 'desc' }],
    take: mostShown,
  })
  return rows.filter(
    ({ tablet, lastSeenAt, idleMs: ownIdleMs }) =>
      (tablet === null || tablet.revokedAt === null) && now.getTime() - lastSeenAt.getTime() <= (ownIdleMs ?? idleMs),
  )
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
