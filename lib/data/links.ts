import 'server-only'
import { createHash, randomBytes } from 'node:crypto'
import type { Reader } from './db'
import { newId } from './ids'
import type { Write } from './write'

/** 192 bits: nobody guesses one. Only its hash is kept, so that a copy of the database opens no link. */
export const newToken = (): string => randomBytes(24).toString('base64url')
const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex')

export async function addLink(w: Write, jobId: string, token: string, expiresAt: Date): Promise<string> {
  const id = newId(w.now)
  await w.tx.customerLink.create({
    data: { id, jobId, tokenHash: hashOf(token), createdAt: w.now, expiresAt, byId: w.actor.personId },
  })
  return id
}

/** The job a link opens now; null for one that never was, has run out or was revoked: which, is not told. */
export async function jobOfLink(reader: Reader, token: string, now: Date): Promise<string | null> {
  if (!/^[\w-]{32}$/.test(token)) return null
  const link = await reader.customerLink.findUnique({ where: { tokenHash: hashOf(token) } })
  return link && link.revokedAt === null && link.expiresAt > now ? link.jobId : null
}

export const linksOfJob = (reader: Reader, jobId: string) =>
  reader.customerLink.findMany({
    where: { jobId },
    orderBy: { createdAt: 'desc' },
    select: { id: true, createdAt: true, expiresAt: true, revokedAt: true, byId: true },
  })
