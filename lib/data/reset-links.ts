import 'server-only'
import { newResetToken, tokenHashOf } from './device-secrets'
import type { Reader, Tx } from './db'
import { newId } from './ids'
import { authorId, type Author, type Write } from './write'

const lastsMs = 24 * 60 * 60 * 1000

export const resetPath = (token: string): string => `/reset/${token}`

/** A new link in the place of any that this person had. The token is told this once. */
export async function addResetLink(ctx: Write<Author>, personId: string): Promise<{ token: string; expiresAt: Date }> {
  await endResetLinks(ctx.tx, personId, ctx.now)
  const token = newResetToken()
  const expiresAt = new Date(ctx.now.getTime() + lastsMs)
  const row = { id: newId(ctx.now), personId, tokenHash: tokenHashOf(token), createdAt: ctx.now, expiresAt }
  await ctx.tx.resetLink.create({ data: { ...row, byId: authorId(ctx.actor) } })
  return { token, expiresAt }
}

/** Whose password a link resets now; null: it never was, was used, was replaced, ran out, or its person is retired. */
export async function personOfResetLink(reader: Reader, token: string, now: Date) {
  if (!/^[\w-]{32}$/.test(token)) return null
  const link = await reader.resetLink.findUnique({
    where: { tokenHash: tokenHashOf(token) },
    include: { person: true },
  })
  if (!link || link.endedAt !== null || link.expiresAt <= now || link.person.retiredAt !== null) return null
  return link.person
}

/** Uses a link up, so that nobody else can. False: somebody has. */
export async function spendResetLink(tx: Tx, token: string, now: Date): Promise<boolean> {
  const spent = await tx.resetLink.updateMany({
    where: { tokenHash: tokenHashOf(token), endedAt: null, expiresAt: { gt: now } },
    data: { endedAt: now },
  })
  return spent.count === 1
}

/** No link of this person's opens anything any more. */
export async function endResetLinks(tx: Tx, personId: string, now: Date): Promise<void> {
  await tx.resetLink.updateMany({ where: { personId, endedAt: null }, data: { endedAt: now } })
}
