import 'server-only'
import { bestEffort } from './best-effort'

// On globalThis, because the server may load this module more than once.
const home = globalThis as typeof globalThis & { brasstagSeen?: Map<string, Date> }
/** What could not be written: a full disk signs nobody out who is at work. Of this process; gone once it is written. */
const unwritten = (home.brasstagSeen ??= new Map())
const most = 1000

/** When a session was last used, as far as it is known. */
export function lastSeenOf({ id, lastSeenAt }: { readonly id: string; readonly lastSeenAt: Date }): Date {
  const here = unwritten.get(id)
  return here && here > lastSeenAt ? here : lastSeenAt
}

/** Writes that a session is in use, or keeps it in mind. */
export async function keepSeen(sessionId: string, now: Date, written: Promise<unknown>): Promise<void> {
  if (await bestEffort(written)) unwritten.delete(sessionId)
  else if (unwritten.size < most) unwritten.set(sessionId, now)
}
