import 'server-only'
import type { Actor, Grant, Role } from '@/lib/core/access/roles'
import { db, type Reader } from './db'
import { newId } from './ids'

const idleMs = 12 * 60 * 60 * 1000
const absoluteMs = 7 * 24 * 60 * 60 * 1000
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

/** The person behind a session id, or null when it ended, expired, idled out, or the person was retired. */
export async function actorOfSession(sessionId: string, now: Date): Promise<Actor | null> {
  const client = await db()
  const session = await client.session.findUnique({ where: { id: sessionId }, include: { person: true } })
  if (!session || session.endedAt || session.person.retiredAt || session.expiresAt <= now) return null
  if (now.getTime() - session.lastSeenAt.getTime() > idleMs) return null
  if (now.getTime() - session.lastSeenAt.getTime() > seenEveryMs) {
    await client.session.update({ where: { id: sessionId }, data: { lastSeenAt: now } })
  }
  return actorOf(session.person)
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
