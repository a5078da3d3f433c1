import 'server-only'
import { pinWaitMs } from '@/lib/core/access/pin-pause'
import type { Db, Reader } from './db'

type Where = { readonly personId: string; readonly tabletId: string }

/** How long each person still waits on a tablet, ms; who is not in it may try. */
export async function pinWaits(reader: Reader, tabletId: string, now: Date): Promise<ReadonlyMap<string, number>> {
  const rows = await reader.pinTries.findMany({ where: { tabletId } })
  return new Map(rows.map((row) => [row.personId, pinWaitMs(row, now)]))
}

/**
 * Counts a try before it is looked at, so that tries at the same moment cannot all be free. How long to wait, ms; 0: this
 * one may be looked at.
 */
export async function takePinTry(client: Db, { personId, tabletId }: Where, now: Date): Promise<number> {
  const at = { personId, tabletId }
  const before = await client.pinTries.findUnique({ where: { personId_tabletId: at } })
  const waitMs = pinWaitMs(before, now)
  if (waitMs > 0) return waitMs
  if (before === null) {
    const added = await client.pinTries.create({ data: { ...at, wrong: 1, lastAt: now } }).catch(nullWhenTaken)
    return added ? 0 : anotherNowMs
  }
  const changed = await client.pinTries.updateMany({
    where: { ...at, wrong: before.wrong },
    data: { wrong: before.wrong + 1, lastAt: now },
  })
  return changed.count === 1 ? 0 : anotherNowMs
}

/** Somebody else tried at this very moment. */
const anotherNowMs = 1000

function nullWhenTaken(error: unknown): null {
  if (typeof error === 'object' && error !== null && 'code' in error && error.code === 'P2002') return null
  throw error
}

/** The right PIN: the next wrong one is the first again. */
export async function forgetPinTries(reader: Reader, where: Where): Promise<void> {
  await reader.pinTries.deleteMany({ where })
}

/** A new PIN, or none: what was tried on the old one counts no more. */
export async function forgetPinTriesOf(reader: Reader, personId: string): Promise<void> {
  await reader.pinTries.deleteMany({ where: { personId } })
}
