import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import { stations, type Station } from '@/lib/core/route/step-ids'
import type { Reader, Tx } from './db'
import { codeHashOf, tokenHashOf } from './device-secrets'
import { pageOfRows, rowsOfPage } from './paging'
import type { AtTablet } from './sessions'
import { currentSettings } from './settings'

const codeLastsMs = 10 * 60 * 1000
const seenEveryMs = 60 * 1000

/** A station that is none any more is the first one: the tablet still opens. */
export const stationOf = (text: string): Station => stations.find((station) => station === text) ?? stations[0]

export const codeEnds = (now: Date): Date => new Date(now.getTime() + codeLastsMs)

/** A page of them by name, those in use first. */
export const listTablets = async (reader: Reader, page: number) =>
  pageOfRows(
    await reader.tablet.findMany({
      orderBy: [{ revokedAt: { sort: 'desc', nulls: 'first' } }, { name: 'asc' }, { id: 'asc' }],
      ...rowsOfPage(page),
    }),
  )

export async function tabletById(reader: Reader, id: string) {
  const tablet = await reader.tablet.findUnique({ where: { id } })
  if (!tablet) throw new RefusedError({ code: 'not-found', message: 'There is no such tablet.' })
  return tablet
}

/** The tablet that a device says it is; null when it is none, or none any more. */
export async function tabletOfToken(reader: Reader, token: string | null) {
  if (token === null || token.length > 200) return null
  const tablet = await reader.tablet.findUnique({ where: { tokenHash: tokenHashOf(token) } })
  return tablet && tablet.revokedAt === null ? tablet : null
}

/** The same with how long a session on it may be left alone, as the owner's setting is now. */
export async function tabletAt(reader: Reader, token: string | null): Promise<AtTablet | null> {
  const tablet = await tabletOfToken(reader, token)
  if (!tablet) return null
  const { values } = await currentSettings(reader)
  return { tabletId: tablet.id, idleMs: values.tabletIdleMinutes * 60_000 }
}

/** Written at most once a minute. */
export async function noteSeen(reader: Reader, tablet: { id: string; lastSeenAt: Date }, now: Date): Promise<void> {
  if (now.getTime() - tablet.lastSeenAt.getTime() <= seenEveryMs) return
  await reader.tablet.updateMany({ where: { id: tablet.id }, data: { lastSeenAt: now } })
}

/** Who made a code; null: there is no such code. */
export const codeMaker = async (reader: Reader, code: string): Promise<string | null> =>
  (await reader.tabletCode.findUnique({ where: { codeHash: codeHashOf(code) }, select: { byId: true } }))?.byId ?? null

/** Takes a code that is still good, so that nobody else can; null: never was, used, or too old, without saying which. */
export async function spendCode(tx: Tx, code: string, now: Date) {
  const codeHash = codeHashOf(code)
  const spent = await tx.tabletCode.updateMany({
    where: { codeHash, usedAt: null, expiresAt: { gt: now } },
    data: { usedAt: now },
  })
  return spent.count === 1 ? tx.tabletCode.findUnique({ where: { codeHash } }) : null
}
