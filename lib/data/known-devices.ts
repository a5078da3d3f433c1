import 'server-only'
import type { Reader } from './db'
import { tokenHashOf } from './device-secrets'
import { newId } from './ids'

/** Of one person: the one not seen for longest goes when another comes. */
const mostDevices = 12

/** The hash of a browser's mark where this person has signed in with it before; null: a strange browser. */
export async function knownMark(reader: Reader, personId: string, mark: string | null): Promise<string | null> {
  if (mark === null || mark === '' || mark.length > 200) return null
  const markHash = tokenHashOf(mark)
  const row = await reader.knownDevice.findUnique({ where: { personId_markHash: { personId, markHash } } })
  return row === null ? null : markHash
}

/** This person has signed in with this browser. */
export async function rememberDevice(reader: Reader, personId: string, mark: string, now: Date): Promise<void> {
  const markHash = tokenHashOf(mark)
  await reader.knownDevice.upsert({
    where: { personId_markHash: { personId, markHash } },
    create: { id: newId(now), personId, markHash, lastSeenAt: now },
    update: { lastSeenAt: now },
  })
  const over = await reader.knownDevice.findMany({
    where: { personId },
    orderBy: [{ lastSeenAt: 'desc' }, { id: 'desc' }],
    skip: mostDevices,
    take: mostDevices,
  })
  if (over.length > 0) await reader.knownDevice.deleteMany({ where: { id: { in: over.map(({ id }) => id) } } })
}

/** No browser is this person's any more: their password was reset by a link. */
export async function forgetDevices(reader: Reader, personId: string): Promise<void> {
  await reader.knownDevice.deleteMany({ where: { personId } })
}
