import 'server-only'
import { createHash, randomBytes } from 'node:crypto'
import { RefusedError } from '@/lib/core/errors'
import type { Reader } from './db'
import { newId } from './ids'
import { pageSize } from './paging'
import type { Write } from './write'

/** 192 bits: nobody guesses one. Only its hash is kept, so that a copy of the database opens no link. */
export const newToken = (): string => randomBytes(24).toString('base64url')
const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex')

export async function addLink(ctx: Write, jobId: string, token: string, expiresAt: Date): Promise<string> {
  const id = newId(ctx.now)
  await ctx.tx.customerLink.create({
    data: { id, jobId, tokenHash: hashOf(token), createdAt: ctx.now, expiresAt, byId: ctx.actor.personId },
  })
  return id
}

const dayMs = 24 * 60 * 60 * 1000
const daysOpen = 180

/** A new link to a job, put on record: the one place that says how long one opens. */
export async function makeLink(ctx: Write, jobId: string): Promise<MadeLink> {
  const token = newToken()
  const expiresAt = new Date(ctx.now.getTime() + daysOpen * dayMs)
  const linkId = await addLink(ctx, jobId, token, expiresAt)
  ctx.audit({ action: 'customer-link.make', subjectId: linkId, jobId, changes: { expiresAt } })
  return { linkId, token, expiresAt }
}
export type MadeLink = { readonly linkId: string; readonly token: string; readonly expiresAt: Date }

export const linkPath = (token: string): string => `/s/${token}`

export type OpenLink = { readonly id: string; readonly jobId: string }

/** The link that opens a job now; one that never was, has run out or was revoked is refused without saying which. */
export async function openLink(reader: Reader, token: string, now: Date): Promise<OpenLink> {
  const link = /^[\w-]{32}$/.test(token)
    ? await reader.customerLink.findUnique({ where: { tokenHash: hashOf(token) } })
    : null
  if (link && link.revokedAt === null && link.expiresAt > now) return { id: link.id, jobId: link.jobId }
  throw deadLink()
}

/** Said of everything that a link does not open: a dead one, and what is of another job. */
export const deadLink = (): RefusedError =>
  new RefusedError({ code: 'not-found', message: 'This link does not open anything.' })

export const linksOfJob = (reader: Reader, jobId: string) =>
  reader.customerLink.findMany({
    where: { jobId },
    orderBy: { createdAt: 'desc' },
    take: pageSize,
    select: { id: true, createdAt: true, expiresAt: true, revokedAt: true, byId: true },
  })

export async function linkById(reader: Reader, id: string) {
  const link = await reader.customerLink.findUnique({ where: { id } })
  if (!link) throw new RefusedError({ code: 'not-found', message: 'There is no such link.' })
  return link
}

/** Whether somebody ended this link; null is no link, which nobody can end. */
export const isRevoked = async (reader: Reader, id: string | null): Promise<boolean> =>
  id !== null && (await linkById(reader, id)).revokedAt !== null

/** What the customer's page says of its job. */
export const jobOfLink = (reader: Reader, { jobId }: OpenLink) =>
  reader.job.findUniqueOrThrow({
    where: { id: jobId },
    select: { number: true, promiseOn: true, pricesOnLink: true },
  })

/** Refused as a dead link is: a head of another job is as unknown as one that never was. */
export async function refuseOtherJobs(reader: Reader, { jobId }: OpenLink, visitId: string): Promise<void> {
  if (!(await reader.visit.findFirst({ where: { id: visitId, jobId }, select: { id: true } }))) throw deadLink()
}
